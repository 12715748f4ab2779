import type { Context } from 'hono';
import type { Environment } from '../../http/environment.js';
import { renderSeason, type SeasonChange, seasonDocument, seasonFrom } from '../../season/index.js';

export type Document = Record<string, unknown>;

/** The version of the season that stands: forms carry it, so that nobody overwrites what they have not seen. */
export async function standingVersion(c: Context<Environment>): Promise<number> {
  return (await c.var.group.seasonVersions())[0]?.version ?? 0;
}

/**
 * Changes the season as a form asks: the document is edited, checked whole, and takes the place of the version the
 * form was made from.
 * @throws SeasonRefused where it would not hold together, UnknownName 'season-moved' where another version stands by now.
 */
export async function changeSeason(
  c: Context<Environment>,
  edit: (document: Document) => Document,
): Promise<readonly SeasonChange[]> {
  const { group, person, form } = c.var;
  const document = edit(seasonDocument(await group.season()));
  const text = renderSeason(seasonFrom(document, SHOWN_AS));
  const given = Number(form.field('version'));
  return group.applySeason(text, SHOWN_AS, person.name, Number.isInteger(given) ? given : -1);
}

/** What the season is called in sentences about a form. */
const SHOWN_AS = 'season';

/** A list of the document, empty where it is not there. */
export function listIn(document: Document, key: string): readonly unknown[] {
  const list = document[key];
  return Array.isArray(list) ? list : [];
}
