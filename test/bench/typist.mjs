// Someone at the keyboard: types a text key by key at one place, and takes it back key by key, over and over.

export class Typist {
  #typed = 0;
  #forward = true;

  /**
   * @param text where it is typed into
   * @param line its number, counted from 0; typing goes on at its end
   * @param words what is typed
   */
  constructor(text, line, words) {
    this.line = line;
    this.character = text.split("\n")[line].length;
    this.words = words;
  }

  /** The next key as a change of the protocol. */
  next() {
    if (this.#typed === 0) this.#forward = true;
    if (this.#typed === this.words.length) this.#forward = false;
    const end = this.#placeAfter(this.#typed);
    if (this.#forward) {
      this.#typed++;
      return { range: { start: end, end }, text: this.words[this.#typed - 1] };
    }
    this.#typed--;
    return { range: { start: this.#placeAfter(this.#typed), end }, text: "" };
  }

  /** Where the cursor is now. */
  get cursor() {
    return this.#placeAfter(this.#typed);
  }

  #placeAfter(count) {
    const lines = this.words.slice(0, count).split("\n");
    const last = lines.at(-1).length;
    return lines.length === 1
      ? { line: this.line, character: this.character + last }
      : { line: this.line + lines.length - 1, character: last };
  }
}
