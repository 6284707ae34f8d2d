package evenrise.model.rules;

import evenrise.model.electrical.TransformerDraw;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Where an instantaneous current drawn at a panel or node is seen, and how much of it: by itself and up to its source. */
public final class Upstream {
    private static final int PHASES = Phase.values().length;

    private final List<List<At>> paths = new ArrayList<>();

    /**
     * One point of the way up.
     *
     * @param point its place in {@link Distribution#points()}
     * @param parts how much of a current on each phase where it is drawn is on each phase here: by phase here, then there
     */
    public record At(int point, double[][] parts) {
        boolean isSame(At other) {
            return point == other.point && Arrays.deepEquals(parts, other.parts);
        }
    }

    private Upstream(Distribution distribution) {
        distribution.points().forEach(any -> paths.add(List.of()));
        for (int at : distribution.topDown()) {
            paths.set(at, path(distribution.points().get(at)));
        }
    }

    /** Time and space: points and how deep they are nested. */
    public static Upstream of(Distribution distribution) {
        return new Upstream(distribution);
    }

    /** The way from a point, itself first. */
    public List<At> from(int point) {
        return paths.get(point);
    }

    /** Whether two ways pass the same points in the same manner. */
    public static boolean isSame(List<At> one, List<At> other) {
        if (one.size() != other.size()) {
            return false;
        }
        for (int i = 0; i < one.size(); i++) {
            if (!one.get(i).isSame(other.get(i))) {
                return false;
            }
        }
        return true;
    }

    private List<At> path(Point point) {
        List<At> path = new ArrayList<>();
        double[][] own = new double[PHASES][PHASES];
        for (int phase = 0; phase < PHASES; phase++) {
            own[phase][phase] = 1;
        }
        path.add(new At(point.index(), own));
        if (point.parent() < 0) {
            return path;
        }
        double[][] step = point.transformer().map(Upstream::through).orElse(own);
        for (At above : paths.get(point.parent())) {
            path.add(new At(above.point(), point.transformer().isEmpty() ? above.parts() : times(above.parts(), step)));
        }
        return path;
    }

    private static double[][] through(TransformerDraw transformer) {
        double[][] parts = new double[PHASES][PHASES];
        for (int from = 0; from < PHASES; from++) {
            double[] alone = new double[PHASES];
            alone[from] = 1;
            double[] drawn = transformer.envelope(alone);
            for (int to = 0; to < PHASES; to++) {
                parts[to][from] = drawn[to];
            }
        }
        return parts;
    }

    private static double[][] times(double[][] above, double[][] step) {
        double[][] parts = new double[PHASES][PHASES];
        for (int to = 0; to < PHASES; to++) {
            for (int from = 0; from < PHASES; from++) {
                for (int over = 0; over < PHASES; over++) {
                    parts[to][from] += above[to][over] * step[over][from];
                }
            }
        }
        return parts;
    }
}
