// Control characters but for the tab: what could move a terminal's cursor, hide text or turn its direction.
const CONTROL = /[\u0000-\u0008\u000a-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** A log's text as it may be shown on a terminal: no control characters, so that it cannot steer it. */
export function plain(text: string): string {
  return text.replace(CONTROL, "\ufffd");
}
