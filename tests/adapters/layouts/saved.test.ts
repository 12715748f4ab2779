import { describe, expect, it } from 'vitest';
import { layoutFor, layoutFrom, readLayout, writeLayout } from '../../../adapters/layouts-saved.js';
import { sameReadings } from './compare.js';
import { sampleRecord } from './layout.js';
import { layouts } from './layouts.js';
import { readThrough } from './through.js';

const delimited = layouts.filter(({ file }) => !/\.(?:waterml|xml|gz)$/.test(file));

describe('a layout saved from a download', () => {
  it.each(delimited.map((layout) => [layout.file, layout] as const))(
    '%s reads next year’s file without a question',
    async (file, layout) => {
      const bytes = layout.write(sampleRecord(layout));
      const { report } = await readThrough(bytes, layout.asked, layout.known, file);
      const made = layoutFrom('ours', report, layout.asked, file);
      if (made === null) throw new Error('a delimited download has a layout');
      const saved = readLayout(writeLayout(made));
      expect(layoutFor([saved], file, bytes)).toEqual(saved);
      const { station, notAfter } = layout.asked;
      const next = layout.record({ ...layout.plan, seed: 99 });
      const again = await readThrough(
        layout.write(next),
        { station, notAfter, layout: saved.settled },
        layout.known,
        file,
      );
      sameReadings(again, layout.expected(next));
    },
  );
});
