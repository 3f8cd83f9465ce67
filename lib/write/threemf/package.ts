/** Where the thumbnail lies in the package. */
export const THUMBNAIL = 'Metadata/thumbnail.png';

/**
 * What kinds of files the package holds, by the endings of their names.
 * Source: ECMA-376 part 2, section 10.1.2 (content types), from memory.
 */
export function contentTypes(thumbnail: boolean): string {
  const types = [
    ['rels', 'application/vnd.openxmlformats-package.relationships+xml'],
    ['model', 'application/vnd.ms-package.3dmanufacturing-3dmodel+xml'],
    ...(thumbnail ? [['png', 'image/png']] : []),
  ];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">',
    ...types.map(([ending, type]) => `<Default Extension="${ending}" ContentType="${type}"/>`),
    '</Types>\n',
  ].join('\n');
}

/**
 * What the package as a whole leads to: the model, and the picture that stands for it where there is one.
 * Source: 3MF Core Specification 1.2.4, sections 2.1 (model) and 2.1.1 (thumbnail), from memory.
 */
export function relationships(thumbnail: boolean): string {
  const targets = [
    ['http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel', '3D/3dmodel.model'],
    ...(thumbnail
      ? [['http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail', THUMBNAIL]]
      : []),
  ];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">',
    ...targets.map(([type, target], i) => `<Relationship Id="rel${i}" Type="${type}" Target="/${target}"/>`),
    '</Relationships>\n',
  ].join('\n');
}
