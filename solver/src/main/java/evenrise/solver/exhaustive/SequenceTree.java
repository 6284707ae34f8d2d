package evenrise.solver.exhaustive;

import evenrise.solver.exhaustive.LoadKinds.Kind;
import evenrise.solver.exhaustive.Timetable.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Who comes on at which output of a timetable, output by output in the order of their times, each left unused or given to a
 * load: by the rules of order, boards and groups, and, where it is told who shares a phase, below a limit of the peak. A
 * state that leads nowhere is not entered again, nor is one like it that is harder, in this timetable or in another that
 * ends alike.
 */
final class SequenceTree {
    /** What is less is nothing: of an inrush that has decayed so far, every sum is taken lower than it is. */
    private static final double NOTHING_AMPS = 1e-6;

    private static final int NOBODY = -1;
    private static final int COUNT_BITS = 8;
    private static final int COUNTS_A_NUMBER = Long.SIZE / COUNT_BITS;

    private final SmallProject project;
    private final Steps steps;
    private final Kind[] kinds;
    private final long[][] wait;

    /** Of each kind, those that it waits for, those among these that have to settle, and those that wait for it. */
    private final int[][] before;

    private final int[][] settling;
    private final int[][] after;
    private final int[] watchedPhases;
    private final double[] standing;
    private final BoardSeats seats;
    private final FailedStates failed = new FailedStates();

    private final int[] left;

    /** How long the inrush of each kind counts. */
    private final double[] rings;

    private final long[] firstOn;
    private final long[] lastOn;
    private final double[] bases;
    private final long[] key;
    private final Ringing[] ringing;
    private Instant[] instants;
    private int[] tails;
    private int[] kindAt;
    private int unplaced;
    private double limitAmps;

    /** Phases left aside. */
    SequenceTree(SmallProject project, Steps steps) {
        this(project, new int[project.loads.size()], 0, steps);
    }

    /**
     * @param phaseSets of each load, as bits
     * @param watched phases whose currents are held below a limit, as bits
     */
    SequenceTree(SmallProject project, int[] phaseSets, int watched, Steps steps) {
        LoadKinds loads = new LoadKinds(project, phaseSets, watched);
        this.project = project;
        this.steps = steps;
        this.kinds = loads.kinds.toArray(Kind[]::new);
        this.wait = loads.waitMicros;
        before = chosen((kind, other) -> wait[other][kind] >= 0);
        settling = chosen((kind, other) -> wait[other][kind] > Micros.FORGIVEN);
        after = chosen((kind, other) -> wait[kind][other] >= 0);
        watchedPhases = IntStream.range(0, project.phases)
                .filter(phase -> (watched & 1 << phase) != 0)
                .toArray();
        standing = new double[project.phases];
        bases = new double[project.phases];
        project.loads.stream()
                .filter(load -> !load.switched())
                .forEach(load -> add(standing, phaseSets[load.index()] & watched, load.baseAmps()));
        seats = new BoardSeats(project);
        left = new int[kinds.length];
        rings = Arrays.stream(kinds)
                .mapToDouble(kind -> kind.phaseSet() == 0
                        ? Double.NEGATIVE_INFINITY
                        : kind.first().ringsMicros(NOTHING_AMPS, project.toleranceMicros))
                .toArray();
        firstOn = new long[kinds.length];
        lastOn = new long[kinds.length];
        int switched =
                Arrays.stream(kinds).mapToInt(kind -> kind.members().size()).sum();
        key = new long[2 + 5 * kinds.length];
        ringing = new Ringing[switched + 1];
        Arrays.setAll(ringing, depth -> new Ringing(switched));
    }

    /** Takes two kinds. */
    private interface Relation {
        boolean holds(int kind, int other);
    }

    private int[][] chosen(Relation relation) {
        int[][] chosen = new int[kinds.length][];
        Arrays.setAll(
                chosen,
                kind -> IntStream.range(0, kinds.length)
                        .filter(other -> relation.holds(kind, other))
                        .toArray());
        return chosen;
    }

    /** How many states are known to lead nowhere, of all searches. */
    int size() {
        return failed.size();
    }

    /**
     * The kind at each of the first instants, or -1, for a seating by times alone.
     *
     * @param end how many instants there are
     * @param tails of all of the instants
     */
    Optional<int[]> find(List<Instant> all, int end, int[] tails) {
        return find(all, end, tails, Double.POSITIVE_INFINITY);
    }

    /** The same with no watched phase above {@code limitAmps} at any instant. */
    Optional<int[]> find(List<Instant> all, int end, int[] tails, double limitAmps) {
        this.instants = all.subList(0, end).toArray(Instant[]::new);
        this.tails = tails;
        this.limitAmps = limitAmps;
        kindAt = new int[instants.length];
        Arrays.fill(kindAt, NOBODY);
        unplaced = 0;
        for (int kind = 0; kind < kinds.length; kind++) {
            left[kind] = kinds[kind].members().size();
            unplaced += left[kind];
            firstOn[kind] = -1;
            lastOn[kind] = -1;
        }
        System.arraycopy(standing, 0, bases, 0, bases.length);
        seats.clear(instants);
        ringing[0].clear();
        return isStandingWithin() && fill(0, ringing[0]) ? Optional.of(kindAt) : Optional.empty();
    }

    private boolean isStandingWithin() {
        return Arrays.stream(bases).allMatch(amps -> amps <= limitAmps);
    }

    private boolean fill(int at, Ringing before) {
        steps.one();
        if (unplaced == 0) {
            for (int i = at; i < instants.length; i++) {
                if (instants[i].isLast()) {
                    return false;
                }
            }
            return true;
        }
        if (instants.length - at < unplaced || !seats.suffice(at, left, kinds) || !fits()) {
            return false;
        }
        Instant now = instants[at];
        Ringing still = ringing[unplaced];
        still.keep(before, now.micros());
        int length = state(at);
        double[] hardship = still.hardship(at);
        if (failed.covers(key, length, hardship)) {
            return false;
        }
        long[] state = Arrays.copyOf(key, length);
        for (int kind = 0; kind < kinds.length; kind++) {
            if (left[kind] > 0 && mayCome(kind, now) && bears(kind, now, still)) {
                long first = firstOn[kind];
                long last = lastOn[kind];
                long seat = seats.take(now.board(), kinds[kind].first());
                put(kind, now, 1);
                firstOn[kind] = first < 0 ? now.micros() : first;
                lastOn[kind] = now.micros();
                kindAt[at] = kind;
                int depth = still.size;
                still.add(kind, now.micros());
                if (fill(at + 1, still)) {
                    return true;
                }
                still.size = depth;
                kindAt[at] = NOBODY;
                firstOn[kind] = first;
                lastOn[kind] = last;
                put(kind, now, -1);
                seats.giveBack(now.board(), kinds[kind].first(), seat);
            }
        }
        if (!now.isLast() && fill(at + 1, still)) {
            return true;
        }
        failed.add(state, length, hardship);
        return false;
    }

    private void put(int kind, Instant now, int times) {
        left[kind] -= times;
        unplaced -= times;
        add(bases, kinds[kind].phaseSet(), times * kinds[kind].first().baseAmps());
    }

    private static void add(double[] sums, int set, double amps) {
        for (int phase = 0; set >> phase != 0; phase++) {
            if ((set & 1 << phase) != 0) {
                sums[phase] += amps;
            }
        }
    }

    /** By order, the output and the board. */
    private boolean mayCome(int kind, Instant now) {
        SmallLoad load = kinds[kind].first();
        if (!project.mayUse(load, now.board(), now.output()) || !seats.mayTake(now.board(), load)) {
            return false;
        }
        for (int other : before[kind]) {
            long waiting = wait[other][kind];
            boolean isEarly = left[other] > 0
                    ? waiting > Micros.FORGIVEN
                    : lastOn[other] + waiting > now.micros() + Micros.FORGIVEN;
            if (isEarly) {
                return false;
            }
        }
        for (int other : after[kind]) {
            if (firstOn[other] >= 0 && firstOn[other] + Micros.FORGIVEN < now.micros() + wait[kind][other]) {
                return false;
            }
        }
        return true;
    }

    /** Whether its phases bear it now, with all that is on. */
    private boolean bears(int kind, Instant now, Ringing still) {
        SmallLoad load = kinds[kind].first();
        for (int phase = 0; phase < bases.length; phase++) {
            if ((kinds[kind].phaseSet() & 1 << phase) != 0) {
                double amps = bases[phase] + load.baseAmps() + load.excessAmps() + still.amps(phase, now.micros());
                if (amps > limitAmps) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Whether each phase bears what is left to come on at all, in the order that asks least of it. */
    private boolean fits() {
        for (int phase = 0; phase < bases.length; phase++) {
            double sum = bases[phase];
            for (int kind = 0; kind < kinds.length; kind++) {
                if (left[kind] > 0 && (kinds[kind].phaseSet() & 1 << phase) != 0) {
                    sum += left[kind] * kinds[kind].first().baseAmps();
                    if (sum + kinds[kind].first().excessAmps() > limitAmps) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /** Writes all that decides what is possible from here, but for what rings, into the key; how long it is. */
    private int state(int at) {
        long now = instants[at].micros();
        int length = 0;
        key[length++] = tails[at];
        key[length++] = seats.state();
        for (int kind = 0; kind < kinds.length; kind += COUNTS_A_NUMBER) {
            long counts = 0;
            for (int next = kind; next < Math.min(kinds.length, kind + COUNTS_A_NUMBER); next++) {
                counts = counts << COUNT_BITS | left[next];
            }
            key[length++] = counts;
        }
        for (int kind = 0; kind < kinds.length; kind++) {
            if (left[kind] > 0) {
                long ready = -1;
                for (int other : settling[kind]) {
                    if (left[other] == 0) {
                        ready = Math.max(ready, lastOn[other] + wait[other][kind]);
                    }
                }
                if (ready > now + Micros.FORGIVEN) {
                    key[length++] = -1 - kind;
                    key[length++] = ready;
                }
            }
            if (firstOn[kind] >= 0 && firstOn[kind] + Micros.FORGIVEN >= now) {
                key[length++] = kind;
                key[length++] = firstOn[kind];
            }
        }
        return length;
    }

    /** Loads whose inrush is not over. */
    private final class Ringing {
        private final int[] kind;
        private final long[] on;
        private int size;

        Ringing(int most) {
            kind = new int[most + 1];
            on = new long[most + 1];
        }

        void clear() {
            size = 0;
        }

        void add(int one, long micros) {
            if (rings[one] > 0) {
                kind[size] = one;
                on[size++] = micros;
            }
        }

        /** Those of {@code before} whose inrush is not over yet. */
        void keep(Ringing before, long now) {
            int kept = 0;
            for (int i = 0; i < before.size; i++) {
                if (now - before.on[i] < rings[before.kind[i]]) {
                    kind[kept] = before.kind[i];
                    on[kept++] = before.on[i];
                }
            }
            size = kept;
        }

        double amps(int phase, long now) {
            double sum = 0;
            for (int i = 0; i < size; i++) {
                if ((kinds[kind[i]].phaseSet() & 1 << phase) != 0) {
                    sum += left(i, now);
                }
            }
            return sum;
        }

        /**
         * What makes it hard to go on from {@code at}, more of each being harder: a low limit, an early end, and what rings
         * on each watched phase at each instant to come, as far as anything does.
         */
        double[] hardship(int at) {
            int end = at;
            for (int i = 0; i < size; i++) {
                while (end < instants.length && instants[end].micros() - on[i] < rings[kind[i]]) {
                    end++;
                }
            }
            double[] amps = new double[2 + (end - at) * watchedPhases.length];
            amps[0] = -limitAmps;
            amps[1] = at - instants.length;
            for (int i = 0; i < size; i++) {
                int set = kinds[kind[i]].phaseSet();
                for (int next = at; next < end && instants[next].micros() - on[i] < rings[kind[i]]; next++) {
                    double left = left(i, instants[next].micros());
                    for (int phase = 0; phase < watchedPhases.length; phase++) {
                        if ((set & 1 << watchedPhases[phase]) != 0) {
                            amps[2 + (next - at) * watchedPhases.length + phase] += left;
                        }
                    }
                }
            }
            return amps;
        }

        private double left(int i, long now) {
            return now - on[i] < rings[kind[i]]
                    ? kinds[kind[i]].first().leftAmps(now - on[i], project.toleranceMicros)
                    : 0;
        }
    }
}
