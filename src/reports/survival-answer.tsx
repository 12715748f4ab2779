import type { Speech } from '../pages/speech.js';
import type { Survival } from '../survival/index.js';
import { besides, shortAnswer } from './sentences.js';
import { SurvivalSection } from './survival-section.js';

/** The answer, what stands beside it, and all it rests on. */
export function SurvivalAnswer({ survival, speech }: { survival: Survival; speech: Speech }) {
  return (
    <>
      <p class="answer">{shortAnswer(survival, speech)}</p>
      {besides(survival, speech).map((sentence) => (
        <p>{sentence}</p>
      ))}
      <SurvivalSection survival={survival} speech={speech} />
    </>
  );
}
