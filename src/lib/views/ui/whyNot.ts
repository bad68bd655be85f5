/** What browsers say of a script that could not be fetched: Chromium's, Firefox's and Safari's words. */
const NOT_FETCHED = /dynamically imported module|Importing a module script failed/i;

/** Why something went wrong, for people: mostly that a part of the page, wanted for the first time, has not come. */
export function whyNot(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return NOT_FETCHED.test(message)
    ? 'a part of the page could not be fetched, there may be no network just now. Nothing is lost; press again to try again.'
    : message;
}
