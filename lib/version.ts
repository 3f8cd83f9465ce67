/** Version of cogweave, as in package.json; a test holds the two together. */
export const version = '0.2.0';
