// Stands in for what a package would load for work that it is never given here.
export default null;
