import { type Group, type GroupOptions, openGroup } from '../group/index.js';
import type { Face } from './face.js';

/** Opens the face's group, works with it and closes it, also when the work fails. */
export async function withGroup<Result>(
  face: Face,
  work: (group: Group) => Promise<Result>,
  options: GroupOptions = {},
): Promise<Result> {
  const group = await openGroup(face.dataFolder, options);
  try {
    return await work(group);
  } finally {
    await group.close();
  }
}
