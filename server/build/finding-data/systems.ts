/** What is wrong with fluid systems and circuits. */
export type SystemFindings = Record<never, never>;
