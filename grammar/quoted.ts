/** A text as a log writes it: in quotation marks, on one line. */
export function quoted(text: string): string {
  const plain = text.replace(/[\r\n]+/g, " ").replace(/[\\"]/g, "\\$&");
  return `"${plain}"`;
}
