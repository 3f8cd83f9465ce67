import Module from 'manifold-3d';

export const kernel = await Module();
kernel.setup();
export const { CrossSection } = kernel;
