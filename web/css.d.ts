/** A style sheet imported for its effect. */
declare module "*.css";
