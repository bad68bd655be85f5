/** As most servers of plain files expect it: `404.html` beside the front page. */
export const trailingSlash = 'never';

/** Without scripts, for they could not be found from an address somewhere below. */
export const csr = false;
