package evenrise.model.electrical;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * The most that a neutral carries at any use of its loads: each on, off or anything between.
 *
 * <p>A load is a vector of three parts (fundamental, real and imaginary; third harmonic), and the neutral is the length of
 * the sum of those that are on. A length is convex, so its greatest value over all uses is that of some subset wholly on.
 * Seen from a direction d of length 1, no subset reaches further than h(d) = Σ max(0, v·d), the sum of those that point its
 * way; and since a length is the reach along its own direction, the answer is the greatest h over all directions.
 *
 * <p>The directions are searched by triangles of a sphere, the most promising first. In the triangle of a, b and c every
 * direction is α·a + β·b + γ·c with no part below 0, so by convexity h is at most (α + β + γ)·max(h(a), h(b), h(c)); and
 * α + β + γ is at most 1/ρ, where ρ is the distance of the plane through a, b and c from the centre. That bounds the triangle,
 * and tightens with the square of its size. Every subset met on the way is a lower bound. What is given is the upper one, at
 * most a thousand-millionth above the true value, or more where the effort ends first; it is never below.
 */
public final class WorstNeutral {
    private static final double NEARLY = 1e-9;
    private static final double PARALLEL = 1e-12;
    private static final int MOST_TRIANGLES = 100_000;
    private static final int MOST_ASCENTS = 50;

    /** Loads that point alike are on together. */
    private final List<double[]> vectors;

    /** @param corners unit directions */
    private record Triangle(double[] one, double[] two, double[] three, double atMostAmps) {}

    private WorstNeutral(List<double[]> vectors) {
        this.vectors = vectors;
    }

    /** Of loads that add these shares, each where it is wholly on. */
    public static WorstNeutral of(Collection<NeutralCurrent.Share> shares) {
        List<double[]> merged = new ArrayList<>();
        for (NeutralCurrent.Share share : shares) {
            add(merged, new double[] {share.realAmps(), share.imaginaryAmps(), share.thirdAmps()});
        }
        return new WorstNeutral(merged);
    }

    /** The same with a load more. */
    public WorstNeutral with(NeutralCurrent.Share share, double times) {
        List<double[]> more = new ArrayList<>();
        vectors.forEach(each -> more.add(each.clone()));
        add(more, new double[] {times * share.realAmps(), times * share.imaginaryAmps(), times * share.thirdAmps()});
        return new WorstNeutral(more);
    }

    /** Rms; see above for which side it errs on. */
    public double amps() {
        return search(0);
    }

    /** Whether no use exceeds a limit; false where that is not proven. */
    public boolean isWithin(double limitAmps) {
        return search(limitAmps) <= limitAmps;
    }

    private static void add(List<double[]> merged, double[] vector) {
        double length = length(vector);
        if (length == 0) {
            return;
        }
        for (double[] each : merged) {
            double own = length(each);
            if (dot(each, vector) > 0 && length(cross(each, vector)) <= PARALLEL * own * length) {
                for (int i = 0; i < 3; i++) {
                    each[i] += vector[i];
                }
                return;
            }
        }
        merged.add(vector.clone());
    }

    /** @param enoughAmps an answer up to this need not be exact, nor one above it */
    private double search(double enoughAmps) {
        double found = 0;
        PriorityQueue<Triangle> open = new PriorityQueue<>(
                Comparator.comparingDouble(Triangle::atMostAmps).reversed());
        for (int octant = 0; octant < 8; octant++) {
            open.add(triangle(axis(0, octant), axis(1, octant), axis(2, octant)));
        }
        for (int split = 0; !vectors.isEmpty() && split < MOST_TRIANGLES; split += 4) {
            Triangle widest = open.poll();
            found = Math.max(found, climb(sum(widest.one(), widest.two(), widest.three())));
            boolean isDecided = found > enoughAmps && enoughAmps > 0;
            if (isDecided || widest.atMostAmps() <= Math.max(enoughAmps, found * (1 + NEARLY))) {
                return isDecided ? found : widest.atMostAmps();
            }
            double[] opposite = unit(sum(widest.two(), widest.three()));
            double[] beside = unit(sum(widest.one(), widest.three()));
            double[] between = unit(sum(widest.one(), widest.two()));
            open.add(triangle(widest.one(), between, beside));
            open.add(triangle(widest.two(), opposite, between));
            open.add(triangle(widest.three(), beside, opposite));
            open.add(triangle(opposite, beside, between));
        }
        return vectors.isEmpty() ? 0 : open.peek().atMostAmps();
    }

    private Triangle triangle(double[] one, double[] two, double[] three) {
        double[] normal = unit(cross(minus(two, one), minus(three, one)));
        double distance = Math.abs(dot(normal, one));
        double most = Math.max(reach(one), Math.max(reach(two), reach(three)));
        return new Triangle(one, two, three, most / distance);
    }

    /** The furthest that any subset reaches in a direction of length 1. */
    private double reach(double[] direction) {
        double sum = 0;
        for (double[] each : vectors) {
            sum += Math.max(0, dot(each, direction));
        }
        return sum;
    }

    /** The length of a subset: what points one way, then what points that way, as long as it grows. */
    private double climb(double[] from) {
        double[] direction = from;
        double longest = 0;
        for (int i = 0; i < MOST_ASCENTS; i++) {
            double[] reached = new double[3];
            for (double[] each : vectors) {
                if (dot(each, direction) > 0) {
                    reached = sum(reached, each);
                }
            }
            double length = length(reached);
            if (length <= longest) {
                return longest;
            }
            longest = length;
            direction = reached;
        }
        return longest;
    }

    private static double[] axis(int which, int octant) {
        double[] axis = new double[3];
        axis[which] = (octant >> which & 1) == 0 ? 1 : -1;
        return axis;
    }

    private static double[] sum(double[]... all) {
        double[] sum = new double[3];
        for (double[] each : all) {
            for (int i = 0; i < 3; i++) {
                sum[i] += each[i];
            }
        }
        return sum;
    }

    private static double[] minus(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }

    private static double[] unit(double[] a) {
        double length = length(a);
        return new double[] {a[0] / length, a[1] / length, a[2] / length};
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double length(double[] a) {
        return Math.sqrt(dot(a, a));
    }
}
