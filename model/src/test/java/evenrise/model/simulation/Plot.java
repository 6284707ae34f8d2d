package evenrise.model.simulation;

import java.util.Locale;

/** A scene as a picture: the simulated current of each phase under the bound. */
final class Plot {
    private static final int WIDTH = 720;
    private static final int HEIGHT = 300;
    private static final int LEFT = 56;
    private static final int BOTTOM = 36;
    private static final int TOP = 28;
    private static final String[] COLOURS = {"#1b6ca8", "#b5651d", "#5d7a1f"};

    private Plot() {}

    static String svg(Comparison comparison) {
        double most = 1.08 * comparison.boundPeakAmps();
        StringBuilder svg = new StringBuilder();
        add(
                svg,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\" font-size=\"12\">%n",
                WIDTH,
                HEIGHT);
        add(svg, "<title>%s</title>%n", comparison.scene().inWords());
        add(svg, "<rect width=\"%d\" height=\"%d\" fill=\"#ffffff\"/>%n", WIDTH, HEIGHT);
        add(svg, "<text x=\"%d\" y=\"18\">%s</text>%n", LEFT, comparison.scene().inWords());
        for (int i = 0; i <= 4; i++) {
            double amps = most * i / 4;
            add(
                    svg,
                    "<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"#dddddd\"/>%n",
                    LEFT,
                    WIDTH - 8,
                    y(amps, most),
                    y(amps, most));
            add(
                    svg,
                    "<text x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%.0f A</text>%n",
                    LEFT - 6,
                    y(amps, most) + 4,
                    amps);
            double seconds = Scene.LAST_SECONDS * i / 4;
            add(
                    svg,
                    "<text x=\"%.1f\" y=\"%d\" text-anchor=\"%s\">%.1f s</text>%n",
                    x(seconds),
                    HEIGHT - 14,
                    i == 4 ? "end" : "middle",
                    seconds);
        }
        for (int phase = 0; phase < comparison.scene().phases(); phase++) {
            curves(svg, comparison, phase, most);
        }
        return svg.append("</svg>\n").toString().replace("\r", "");
    }

    /** Greatest magnitude in each pixel column, so that no spike is lost. */
    private static void curves(StringBuilder svg, Comparison comparison, int phase, double most) {
        int columns = WIDTH - 8 - LEFT;
        double[] simulated = new double[columns];
        double[] bound = new double[columns];
        Wave wave = comparison.wave();
        for (int i = 0; i < wave.seconds().length; i++) {
            int column = (int) Math.min(columns - 1, wave.seconds()[i] / Scene.LAST_SECONDS * columns);
            simulated[column] = Math.max(simulated[column], Math.abs(wave.amps()[phase][i]));
            bound[column] = Math.max(bound[column], comparison.boundAmps(phase, wave.seconds()[i]));
        }
        add(svg, "<polyline fill=\"none\" stroke=\"%s\" points=\"%s\"/>%n", COLOURS[phase], points(simulated, most));
        add(
                svg,
                "<polyline fill=\"none\" stroke=\"%s\" stroke-width=\"1.6\" stroke-dasharray=\"5 3\" points=\"%s\"/>%n",
                COLOURS[phase],
                points(bound, most));
    }

    private static String points(double[] amps, double most) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < amps.length; i++) {
            boolean isOnALine = i > 0 && i < amps.length - 1 && amps[i] == amps[i - 1] && amps[i] == amps[i + 1];
            if (!isOnALine) {
                add(points, "%d,%.1f ", LEFT + i, y(amps[i], most));
            }
        }
        return points.toString().strip();
    }

    private static double x(double seconds) {
        return LEFT + (WIDTH - 8 - LEFT) * seconds / Scene.LAST_SECONDS;
    }

    private static double y(double amps, double most) {
        return HEIGHT - BOTTOM - (HEIGHT - BOTTOM - TOP) * amps / most;
    }

    private static void add(StringBuilder text, String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values));
    }
}
