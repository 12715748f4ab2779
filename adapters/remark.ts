/**
 * Something to tell a person, as a code with its figures: the words for it, in every language, live in
 * src/words. `Words` maps each code to the figures its sentence needs.
 */
export type Remark<Words> = { [Code in keyof Words]: { code: Code; with: Words[Code] } }[keyof Words];
