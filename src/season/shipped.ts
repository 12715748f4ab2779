/** Development tables that come with the program; a group's own may not take their ids. */
export const shippedTableIds: readonly string[] = [
  'atlantic-salmon',
  'atlantic-salmon-gorodilov',
  'brown-trout',
  'rainbow-trout',
  'brook-trout',
  'degree-days',
];
