/** Lower case, no accents, every run of other marks one space: "Temp. de l'eau (°C)" is "temp de l eau c". */
export function fold(text: string): string {
  return text
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/œ/g, 'oe')
    .replace(/[^a-z0-9#%]+/g, ' ')
    .trim();
}
