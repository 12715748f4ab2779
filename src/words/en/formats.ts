import type { FormatWords, LayoutRule } from '../../../adapters/formats/remark.js';
import { list, whole } from '../format.js';

const column = 'a column’s header, or its number counted from 1';
/** What would do in each part of a saved layout. */
const would: Record<LayoutRule, string> = {
  layout: 'a name, a match and what is settled',
  name: 'a name of 1 to 200 characters',
  match:
    'one of {"header": [headers]}, {"opening": text the first line begins with} and {"fileName": part of the name}',
  settled: 'an object with the parts that are settled',
  encoding: 'utf-8, utf-16le, utf-16be, windows-1252 or cp850',
  delimiter: '"," or ";" or "|" or "\\t" for a tab',
  decimal: '"." or ","',
  headerLine: 'the header’s line counted from 1, or 0 for a file without one',
  dateOrder: 'ymd, dmy or mdy',
  time: 'a list of one column, or of two where date and clock stand apart',
  temperature: column,
  level: column,
  discharge: column,
  station: column,
  unit: 'C, F or K',
  zone: 'a zone’s name such as America/Halifax, UTC, or UTC with hours and minutes such as UTC-03:30',
  missing: 'a list of texts of at most 40 characters',
};

export const formats: { [K in keyof FormatWords]: (w: FormatWords[K]) => string } = {
  'formats.empty': () => 'This file is empty. Download the logger again, or check that the copy finished.',
  'formats.picture': () => 'This is a picture, not a download. Choose the file that came off the logger.',
  'formats.recording': () =>
    'This is a sound or video recording, not a download. Choose the file that came off the logger.',
  'formats.pdf': () =>
    'This is a PDF: a page to look at, whose numbers cannot be read reliably. Export the readings as CSV instead.',
  'formats.document': () =>
    'This is a text document, not a download. Export the readings from the logger’s own software as CSV.',
  'formats.workbook': () =>
    'This is a spreadsheet workbook. Open it, choose “Save as” or “Download as”, pick “CSV UTF-8”, and load that file.',
  'formats.old-office': () =>
    'This is an office file of the older kind, most likely a workbook. Open it, choose “Save as”, pick “CSV”, and load that file.',
  'formats.archive': () =>
    'This is an archive that holds other files. Unpack it and load the files inside one by one.',
  'formats.compressed': () =>
    'This file is compressed in a way that is not read here, or compressed twice. Unpack it first; plain text or a single .gz will do.',
  'formats.database': () =>
    'This is a database file, not a download. Export the readings as CSV and load that.',
  'formats.scientific': () =>
    'This is a scientific data file in a binary form that is not read here. Export the readings as CSV.',
  'formats.program': () => 'This is a program, not a download. Choose the file that came off the logger.',
  'formats.binary': () =>
    'This file is in a logger’s own binary form, or damaged: it holds no readable text. Open it with the software that came with the logger and export the readings as CSV.',
  'formats.login-page': () =>
    'This is a web page that asks you to sign in, saved under the name of a download. Sign in to that site, then download the file again.',
  'formats.web-page': () =>
    'This is a web page, not a download. On that site look for “Download” or “CSV” and load the file it gives.',
  'formats.service-error': () =>
    'This is an error message from the service the file was asked of; it holds no readings. Ask that service again.',
  'formats.old-waterml': () =>
    'This is WaterML 1, which is not read here. Ask the service for WaterML 2.0, or for CSV.',
  'formats.other-xml': ({ root }) =>
    `This is an XML file of a kind that is not read here (it begins with “${root}”). WaterML 2.0 or CSV will do.`,
  'formats.json': () => 'This is a JSON file, which is not read here. Ask for the readings as CSV.',

  'waterml.broken': ({ line }) =>
    `This WaterML file is damaged or incomplete at line ${line}. Download it again.`,
  'waterml.doctype': () =>
    'This XML file carries a document type declaration, which WaterML never needs and which is refused for safety. Ask the service for plain WaterML 2.0.',
  'waterml.too-large': ({ line }) =>
    `This XML file has a single piece at line ${line} that is larger or more deeply nested than any WaterML needs. Download it again, or ask for CSV.`,
  'waterml.coverage': () =>
    'This WaterML keeps times and values apart (domain and range), which is not read here. Ask the service for time-value pairs, or for CSV.',
  'waterml.too-many-series': ({ limit }) =>
    `This WaterML file holds more than ${whole('en', limit)} time series, more than is read at once. Ask the service for fewer stations or a shorter time.`,
  'waterml.no-series': () =>
    'This WaterML file holds no readings. Ask the service for another time or another station.',

  'layout.not-json': () => 'A saved layout is JSON, and this is not. Export it again, or undo the last edit.',
  'layout.unknown-part': ({ path, known }) =>
    `“${path}” is not a part of a saved layout. The parts there are ${list('en', known)}.`,
  'layout.missing-part': ({ path, rule }) => `“${path}” is missing. What would do: ${would[rule]}.`,
  'layout.wrong-part': ({ path, given, rule }) => `“${path}” is ${given}. What would do: ${would[rule]}.`,
  'layout.column-twice': ({ column: name }) =>
    `Column “${name}” is named twice. A column can be one thing only.`,
};

export function layoutSentence<Code extends keyof FormatWords>(problem: {
  code: Code;
  with: FormatWords[Code];
}): string {
  return formats[problem.code](problem.with);
}
