/**
 * Places in a kept report that are filled when it is printed. Comments: what a person writes is escaped and cannot hold
 * one.
 */
export const MAP_HERE = '<!--underice:map-->';
export const MADE_HERE = '<!--underice:made-->';
export const STYLE_HERE = '<!--underice:style-->';
/** Where the day of printing goes in the sentence that says it. */
export const DAY_HERE = '\uE000';
