/** Puts text into the clipboard and says what came of it. `otherwise`: what to do where the browser refuses. */
export async function copyText(text: string, otherwise = 'select the table and copy it'): Promise<string> {
  try {
    await navigator.clipboard.writeText(text);
    return 'Copied.';
  } catch {
    return `The browser does not allow copying here: ${otherwise}.`;
  }
}
