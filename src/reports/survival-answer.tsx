import type { Speech } from '../pages/speech.js';
import type { ReportFigures } from './figures.js';
import { besides, shortAnswer } from './sentences.js';
import { SiteWinters } from './site-winters.js';
import { SurvivalSection } from './survival-section.js';

/** The answer, what stands beside it, and all it rests on. */
export function SurvivalAnswer({ figures, speech }: { figures: ReportFigures; speech: Speech }) {
  const { survival } = figures;
  return (
    <>
      <p class="answer">{shortAnswer(survival, speech)}</p>
      {besides(survival, speech).map((sentence) => (
        <p>{sentence}</p>
      ))}
      <SurvivalSection survival={survival} speech={speech} />
      <SiteWinters figures={figures} speech={speech} />
    </>
  );
}
