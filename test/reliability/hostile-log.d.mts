export const SIGN: string;
export function hostileLog(): string;
