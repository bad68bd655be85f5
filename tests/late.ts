import '$lib/state/fieldTable.ts';

// Tests ask for every build and every field; a page fetches most of them with what checks projects.
