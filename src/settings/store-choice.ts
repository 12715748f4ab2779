import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isMap, parseDocument } from 'yaml';
import { type StoreChoice, type StoreKind, StoreRefused } from '../store/index.js';
import { readSettings, type SettingsInForce } from './index.js';

/** Which store the settings name for a folder, and the server they name. @throws SettingsRefused */
export function storeChoice(folder: string): StoreChoice {
  const { settings } = inForce(folder);
  const { store, influxUrl, influxDatabase, influxUser, influxPassword, influxToken, influxOrganisation } =
    settings;
  const named = influxUrl !== null && influxDatabase !== null;
  return {
    kind: store,
    server: named
      ? {
          url: influxUrl,
          database: influxDatabase,
          user: influxUser,
          password: influxPassword,
          token: influxToken,
          organisation: influxOrganisation,
        }
      : null,
  };
}

/**
 * Whether the settings can name another store once the readings are there: before anything is copied.
 *
 * @throws StoreRefused 'copy-unsettled' where the environment states it.
 */
export function refuseUnsettled(folder: string, kind: StoreKind): void {
  const { settings, origins } = inForce(folder);
  if (origins.store.kind === 'environment' && settings.store !== kind)
    throw new StoreRefused(
      { code: 'copy-unsettled', with: { setting: 'store', place: origins.store.place } },
      2,
    );
}

/** Writes the store that now holds the readings into the settings file, where that states one; the rest stays. */
export function settleStore(folder: string, kind: StoreKind): void {
  const path = process.env.UNDERICE_SETTINGS ?? join(folder, 'settings.yaml');
  if (!existsSync(path)) return;
  const document = parseDocument(readFileSync(path, 'utf8'));
  if (!isMap(document.contents) || !document.has('store') || document.get('store') === kind) return;
  document.set('store', kind);
  const fresh = `${path}.${process.pid}`;
  try {
    writeFileSync(fresh, document.toString(), { mode: 0o600 });
    renameSync(fresh, path);
  } catch (error) {
    rmSync(fresh, { force: true });
    throw error;
  }
}

/** Only what the settings say of stores matters here: another setting's bad value is `serve`'s to refuse. */
function inForce(folder: string): SettingsInForce {
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => /^UNDERICE_(STORE$|INFLUX_)/.test(name)),
  );
  return readSettings({ folder, file: process.env.UNDERICE_SETTINGS || null, env, flags: {} });
}
