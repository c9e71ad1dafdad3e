// The limit: splits every line of a text into words in one pass, and does nothing else.

/** @returns how many lines and words there are */
export function scan(text) {
  const lines = [];
  let words = [];
  let start = -1;
  for (let at = 0; at <= text.length; at++) {
    const unit = at < text.length ? text.charCodeAt(at) : 10;
    if (unit === 32 || unit === 9 || unit === 10 || unit === 13) {
      if (start >= 0) words.push(text.slice(start, at));
      start = -1;
      if (unit !== 10) continue;
      lines.push(words);
      words = [];
    } else if (start < 0) start = at;
  }
  return { lines: lines.length, words: lines.reduce((sum, line) => sum + line.length, 0) };
}
