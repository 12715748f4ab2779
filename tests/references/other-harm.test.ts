import { describe, expect, it } from 'vitest';
import { ELSEWHERE, OTHER_HARM } from '../../forecasting/index.js';
import { words } from '../../src/words/index.js';

describe('the help page tells what else harms eggs, figure by figure', () => {
  const told = (language: 'en' | 'fr') => words(language, 'page-help-other-harm-text', OTHER_HARM);

  it.each([
    ['silt (Can. J. Fish. Aquat. Sci. 61(12), 2004, abstract)', /0\.5% .+ 1\.5%/, /0,5\s%.+ 1,5\s%/],
    [
      'oxygen, mg/L (EPA 1986, memory)',
      /8 mg\/L in the water, 5 in the gravel/,
      /8 mg\/L dans l’eau, 5 dans/,
    ],
    ['pH (DFO 2000/050, seen)', /below 4\.8 kills eggs, below 5 fry/, /sous 4,8 tue les œufs, sous 5 les/],
    ['wading on a redd (Roberts & White 1992, abstract)', /up to 43%/, /jusqu’à 43\s%/],
    [
      'boxes frozen solid (Laramie River 1975-76, abstract)',
      /12 to 20 cm .+ less than 1%/,
      /12 à 20 cm.+ moins de 1\s%/,
    ],
    ['alevins (Ojanguren et al. 1999, abstract)', /survive to 22 °C/, /jusqu’à 22\s°C/],
  ])('%s', (_, en, fr) => {
    expect(told('en')).toMatch(en);
    expect(told('fr')).toMatch(fr);
  });

  it('what survives elsewhere: plates (N. Am. J. Fish. Manage. 12:833, abstract), redds (MacKenzie & Moring 1988)', () => {
    const text = words('en', 'page-help-elsewhere-text', ELSEWHERE);
    expect(text).toMatch(/above 72% hatched/);
    expect(text).toMatch(/2% to 12% emerged, 7% on average/);
    expect(text).toMatch(/70-80%, nature about 10%: common practice/);
  });

  it('in French an egg-sac fry is an alevin vésiculé', () => {
    expect(told('fr')).toContain('alevins vésiculés');
  });
});
