// The build takes style sheets from their import lines.
declare module '*.css' {}
