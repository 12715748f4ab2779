/** Lines of a season file. */
export const lines = (...text: string[]): string => `${text.join('\n')}\n`;
