package evenrise.solver.sample;

/** Two ends between which a quantity is drawn. */
record Range(double from, double to) {
    double draw(SeededDraws draw, int decimals) {
        return draw.between(from, to, decimals);
    }
}
