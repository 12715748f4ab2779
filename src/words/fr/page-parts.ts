import { pages } from './pages.js';
import { pagesBox } from './pages-box.js';
import { pagesDownloads } from './pages-downloads.js';
import { pagesEditing } from './pages-editing.js';
import { pagesHindcast } from './pages-hindcast.js';
import { pagesKeeping } from './pages-keeping.js';
import { pagesLeading } from './pages-leading.js';
import { pagesPeople } from './pages-people.js';
import { pagesStation } from './pages-station.js';
import { pagesTables } from './pages-tables.js';

/** The words of every part of the pages in French; a part adds its line here, in its twin, and in PagesWords. */
export const pageParts = {
  ...pages,
  ...pagesBox,
  ...pagesDownloads,
  ...pagesEditing,
  ...pagesHindcast,
  ...pagesKeeping,
  ...pagesLeading,
  ...pagesPeople,
  ...pagesStation,
  ...pagesTables,
};
