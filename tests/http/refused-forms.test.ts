import { beforeAll, describe, expect, it } from 'vitest';
import { Accounts } from '../../src/http/sign-in/accounts.js';
import { ask, json, type Said, sampleFolder, send, service } from './service.js';

/* What a form says where it is refused: the fields as it labels them, each with a way to it, and no key of the file. */
let at = '';
let folder = '';
beforeAll(async () => {
  folder = await sampleFolder();
  at = (await service(folder)).address;
}, 60_000);

type Language = 'en' | 'fr';

async function post(language: Language, path: string, fields: Record<string, string>): Promise<Said> {
  const visit = '0123456789abcdef';
  const csrf = new Accounts(folder, 1).sign(`form ${visit}`);
  return ask(
    at,
    path,
    send('POST', 'application/x-www-form-urlencoded', new URLSearchParams({ csrf, ...fields }).toString(), {
      Cookie: `underice_visit=${visit}`,
      'Sec-Fetch-Site': 'same-origin',
      'Accept-Language': language,
      Accept: 'text/html',
    }),
  );
}

/** The refusal of a page as its reader sees it, no-break spaces as spaces. */
function refusal({ text }: Said): string {
  const html = /<(div|ul) class="refusal".*?<\/\1>/s.exec(text)?.[0] ?? '';
  return html
    .replace(/<[^>]+>/g, ' ')
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .trim();
}

/** The input that a refusal's first link leads to, as its tag. */
function pointedAt({ text }: Said): string {
  const id = /<li id="wrong-\d+"><a href="#([^"]+)"/.exec(text)?.[1];
  return [...text.matchAll(/<(?:input|select|textarea|fieldset)[^>]*>/g)]
    .map(([tag]) => tag)
    .filter((tag) => tag.includes(`id="${id}"`))
    .join();
}

const version = async () =>
  /name="version" value="(\d+)"/.exec((await ask(at, '/editing/file')).text)?.[1] ?? '';

describe('a form that is refused', () => {
  it.each([
    ['en', 'Latitude (°): “147” is outside what can be: from −90 to 90.'],
    ['fr', 'Latitude (°) : « 147 » sort de ce qui est possible'],
  ] as const)('names a field of a station as the form does (%s)', async (language, words) => {
    const said = await post(language, '/editing/stations/0', {
      version: await version(),
      id: 'upper',
      kind: 'stream',
      latitude: '147',
    });
    expect(said.status).toBe(422);
    expect(refusal(said)).toContain(words);
    expect(refusal(said)).not.toMatch(/stations|›|latitude:/);
    expect(pointedAt(said)).toMatch(/aria-invalid="true" aria-describedby="wrong-1".*name="latitude"/);
  });

  it.each([
    ['en', 'Fill 1, eggs: “many” is not a number.'],
    ['fr', 'Remplissage 1, œufs : « many » n’est pas un nombre.'],
  ] as const)('names what is wrong in a row of a box, and leads to it (%s)', async (language, words) => {
    const said = await post(language, '/editing/boxes/0', {
      version: await version(),
      id: 'U1',
      site: 'upper-pool',
      'fill.lot': 'A',
      'fill.eggs': 'many',
      'fill.planted': '2025-11-04 17:00',
      'fill.part': '',
    });
    expect(refusal(said)).toContain(words);
    expect(pointedAt(said)).toContain('name="fill.eggs"');
  });

  it('names another thing that the change would contradict', async () => {
    const fields = {
      version: await version(),
      id: 'A',
      fertilised: '2025-11-04 14:30',
      eggs: '10',
      table: 'atlantic-salmon',
    };
    const lots = (language: Language) => post(language, '/editing/lots/0', fields);
    expect(refusal(await lots('en'))).toMatch(/Eggs: The boxes hold .* eggs of lot “A”/);
    expect(refusal(await lots('fr'))).toMatch(/Œufs : Les incubateurs contiennent/);
  });

  it.each([
    ['en', 'line 3'],
    ['fr', 'ligne 3'],
  ] as const)('says where in the season’s file, in words and by its keys (%s)', async (language, faulty) => {
    const text = (await ask(at, '/api/v1/season.yaml')).text || (await ask(at, '/editing/file')).text;
    expect(text).toContain('group');
    const said = await post(language, '/editing/file', {
      do: 'preview',
      text: 'group: { name: Ours, zone: America/Halifax }\nlots:\n  - { id: A, fertilised: soon, eggs: 6000, table: atlantic-salmon }\n',
    });
    const seen = refusal(said);
    expect(seen.toLowerCase()).toContain(faulty);
    expect(seen).toContain(
      language === 'en'
        ? 'Lot A, fertilised (lots 1 › fertilised)'
        : 'Lot A, fécondation (lots 1 › fertilised)',
    );
    expect(pointedAt(said)).toContain('<textarea');
    const broken = await post(language, '/editing/file', {
      do: 'preview',
      text: 'group: {}\nlots: []\n\tx: 1\n',
    });
    expect(refusal(broken)).toMatch(language === 'en' ? /Line 3/ : /Ligne 3/);
  });

  it.each([
    ['en', 'Empty:', 'Fungus:'],
    ['fr', 'Vides :', 'Champignon :'],
  ] as const)('of a tally names its fields, kinds of dead too (%s)', async (language, empty, fungus) => {
    const said = await post(language, '/boxes/F2/tally', {
      empty: 'x',
      dead: '3',
      fungus: 'y',
      when: '2026-06-16',
    });
    expect(said.status).toBe(422);
    expect(refusal(said)).toContain(empty);
    expect(refusal(said)).toContain(fungus);
    expect(refusal(said)).not.toMatch(/kinds|empty ?:|›/);
    expect(pointedAt(said)).toContain('name="empty"');
    const early = await post(language, '/boxes/F2/tally', {
      empty: '5',
      dead: '3',
      alive: '0',
      when: '2025-01-16',
    });
    expect(refusal(early)).toContain(language === 'en' ? 'Day:' : 'Jour :');
    expect(refusal(early)).not.toMatch(/lifted ?:|when ?:|tallies/);
  });

  it.each([
    ['en', 'Eggs: “13.000” can be read in two ways'],
    ['fr', 'Œufs : « 13.000 » se lit de deux façons'],
  ] as const)('of an entry names its questions (%s)', async (language, words) => {
    const fields = { site: 'ford', box: 'F9', lot: 'A', eggs: '13.000', when: '2025-11-05T10:00' };
    const said = await post(language, '/autumn/enter/plant', {
      entry: `entry-${language}`,
      heard: '-',
      ...fields,
    });
    const again = /name="heard" value="([^"]+)"/.exec(said.text)?.[1];
    const kept =
      said.status === 422
        ? said
        : await post(language, '/autumn/enter/plant', {
            entry: `entry-${language}`,
            heard: again ?? '',
            ...fields,
          });
    expect(refusal(kept)).toContain(words);
    expect(pointedAt(kept)).toContain('name="eggs"');
  });

  it.each([
    ['en', 'Days to hatch, a line a temperature: “x” is not a number.'],
    ['fr', 'Jours jusqu’à l’éclosion, une ligne par température : « x » n’est pas un nombre.'],
  ] as const)('of a table of one’s own names its field, once (%s)', async (language, words) => {
    const table = {
      id: 'ours',
      name: 'Ours',
      species: 'Salmo salar',
      eye: '0.5',
      button: '1.7',
      source: 'us',
    };
    const rows = '2 120\n4 100\nx 9';
    const said = await post(language, '/tables', { version: await version(), ...table, rows });
    expect(refusal(said).replace(/^[^.]*\. /, '')).toBe(words);
    expect(pointedAt(said)).toContain('name="rows"');
  });

  it.each([
    ['en', 'How many had reached it: “many” is not a number.'],
    ['fr', 'Combien y étaient rendus : « many » n’est pas un nombre.'],
  ] as const)('of a stage that was seen names its field (%s)', async (language, words) => {
    const seen = { date: '2026-02-10', stage: 'eye-up', lot: 'A', seen: 'many' };
    const said = await post(language, '/boxes/F2/observed', { version: await version(), ...seen });
    expect(refusal(said)).toContain(words);
    expect(pointedAt(said)).toContain('name="seen"');
  });

  it('is, of an entry that waits, put right at the desk and taken', async () => {
    const fields = { site: 'upper-pool', box: 'F2', lot: 'A', eggs: '10', part: 'third' };
    const entered = new Date().toISOString();
    const entry = { id: 'waits-elsewhere', kind: 'plant', entered, fields };
    const sent = await ask(
      at,
      '/api/v1/entries',
      json('POST', { now: entered, phone: 'p1', entries: [entry] }),
    );
    expect(sent.text).toContain('waiting');
    const list = await ask(at, '/autumn/entries', {
      headers: { Accept: 'text/html', 'Accept-Language': 'fr' },
    });
    expect(list.text).toContain('Upper Pool');
    expect(list.text).toContain('href="/autumn/entries/waits-elsewhere"');
    const form = await ask(at, '/autumn/entries/waits-elsewhere', { headers: { Accept: 'text/html' } });
    expect(refusal(form)).toContain('Box: Box “F2” lies at site “Le Gué”');
    expect(pointedAt(form)).toContain('name="box"');
    const wrong = await post('en', '/autumn/entries/waits-elsewhere', {
      do: 'correct',
      ...fields,
      eggs: 'ten',
    });
    expect(wrong.status).toBe(422);
    const right = { do: 'correct', ...fields, site: 'ford', when: '2025-11-08T11:00' };
    expect((await post('en', '/autumn/entries/waits-elsewhere', right)).status).toBe(303);
    const { body } = await ask(at, '/api/v1/season/boxes/F2');
    expect(JSON.stringify(body)).toContain('third');
  });

  it('keeps the keys for programs, whose own words they are', async () => {
    const said = await ask(at, '/api/v1/boxes/F2/tally', json('POST', { entry: 'program-1', empty: 'x' }));
    expect(String(said.body.detail)).toContain('empty: “x” is not a number.');
  });
});
