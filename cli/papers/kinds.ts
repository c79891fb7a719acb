/** Words for `--papers`, with what each stands for. */
export const paperKinds: Readonly<Record<string, string>> = {
  book: 'the job book, book.html for a tablet and book.pdf for paper',
  labels: 'labels for panels and offcuts, labels.pdf',
};

/** Languages of the job book and of labels, for `--language`. */
export const bookLanguages: readonly string[] = ['en', 'de'];
