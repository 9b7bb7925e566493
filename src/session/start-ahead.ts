/**
 * A worker that is started before anything is asked of it, so that its script comes and is compiled while the page still
 * opens. Answers with the maker of workers: the first one made is that one, unless it has failed in the meantime.
 */
export function startAhead(make: () => Worker): () => Worker {
  let ahead: Worker | null = null;
  const forget = () => {
    ahead = null;
  };
  try {
    ahead = make();
    ahead.addEventListener('error', forget);
  } catch {
    // whoever asks for a worker meets the same refusal and goes without
  }
  return () => {
    const worker = ahead;
    ahead = null;
    worker?.removeEventListener('error', forget);
    return worker ?? make();
  };
}
