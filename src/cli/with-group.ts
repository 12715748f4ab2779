import { type Group, openGroup } from '../group/index.js';
import type { Face } from './face.js';

/** Opens the face's group, works with it and closes it, also when the work fails. */
export async function withGroup<Result>(
  face: Face,
  work: (group: Group) => Promise<Result>,
): Promise<Result> {
  const group = await openGroup(face.dataFolder);
  try {
    return await work(group);
  } finally {
    await group.close();
  }
}
