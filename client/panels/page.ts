/** The page of a panel: a shell that shows what it is sent. Nothing runs in it but the one script, nothing is fetched. */

export interface PageParts {
  /** Unlike for every page: what carries it may run and style. */
  readonly nonce: string;
  readonly script: string;
  readonly style: string;
  readonly title: string;
  /** Shown until the report is there. */
  readonly waiting: string;
}

export function panelPage({ nonce, script, style, title, waiting }: PageParts): string {
  const policy = `default-src 'none'; img-src data:; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${escaped(title)}</title>
<link nonce="${nonce}" rel="stylesheet" href="${escaped(style)}">
</head>
<body>
<main id="report" aria-busy="true"><p>${escaped(waiting)}</p></main>
<script nonce="${nonce}" src="${escaped(script)}"></script>
</body>
</html>
`;
}

/** A report as a page with this nonce can show it: the style of its drawings is allowed, and nothing else is changed. */
export function allowedFragment(fragment: string, nonce: string): string {
  return fragment.replaceAll("<style>", `<style nonce="${nonce}">`);
}

/** Text that stays text, in elements and in quoted attributes. */
export function escaped(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}

/** Letters and digits that nobody guesses. */
export function newNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(24));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
