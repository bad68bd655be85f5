/** What there is to say of other tabs with the same project. */
export type TabNews =
  | { readonly kind: 'alone' }
  /** Open in so many other tabs, unchanged there. */
  | { readonly kind: 'shared'; readonly tabs: number }
  /** Changed in another tab: mine or theirs? */
  | { readonly kind: 'conflict' };

/** The news for people; null when there is nothing to say. */
export function newsWords(news: TabNews): string | null {
  switch (news.kind) {
    case 'alone':
      return null;
    case 'shared':
      return news.tabs === 1
        ? 'This project is open in another tab too. Change it in one of them only.'
        : `This project is open in ${news.tabs} other tabs too. Change it in one of them only.`;
    case 'conflict':
      return 'Another tab has changed this project. Keep yours or take theirs; the other one stays as a copy.';
  }
}
