package chinelog.reckon.trade;

/** How steep the parabola c0 + c1 (x − x0) + c2 (x − x0)(x − x1) through three points is. */
record Parabola(double x0, double x1, double c1, double c2) {

  static Parabola through(double[] x, double[] y, int a, int b, int c) {
    double first = (y[b] - y[a]) / (x[b] - x[a]);
    double second = (y[c] - y[b]) / (x[c] - x[b]);
    return new Parabola(x[a], x[b], first, (second - first) / (x[c] - x[a]));
  }

  double slope(double x) {
    return c1 + c2 * (2 * x - x0 - x1);
  }
}
