/** What words mean, for those who see colours: colour is never all that says it. */
export type Meaning = 'head' | 'fails' | 'noted' | 'holds';

/** Words as they are to be printed. */
export type Paint = (meaning: Meaning, words: string) => string;

/** No colours. */
export const plain: Paint = (_, words) => words;
