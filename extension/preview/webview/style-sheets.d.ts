/** A style sheet is imported for what the bundler makes of it; it has no exports. */
declare module "*.css";
