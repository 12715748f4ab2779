/** Chunks as a body: one is asked for when there is room for it, none any more when the reader leaves. */
export function streamOf(
  chunks: AsyncIterable<Uint8Array<ArrayBuffer>>,
): ReadableStream<Uint8Array<ArrayBuffer>> {
  const iterator = chunks[Symbol.asyncIterator]();
  return new ReadableStream<Uint8Array<ArrayBuffer>>({
    async pull(controller) {
      const { done, value } = await iterator.next();
      if (done === true) controller.close();
      else controller.enqueue(value);
    },
    async cancel() {
      await iterator.return?.();
    },
  });
}
