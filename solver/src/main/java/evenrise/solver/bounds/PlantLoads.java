package evenrise.solver.bounds;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.SceneCurrents;
import evenrise.solver.bounds.Seats.Seat;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * The loads of a plant by what their sources must see of them at least, wherever they sit. What one output closes comes on
 * at one instant and sits in one panel, so below one source: it is one {@link Closed}.
 */
final class PlantLoads {
    /** Bounds of plants look at more instants than those of one supply, since boards may offer tenths beside quarters. */
    private static final int MOST_INSTANTS = 1500;

    /** Where none of a load's ways to sit is below a source. */
    static final double NEVER = Double.POSITIVE_INFINITY;

    /**
     * A load.
     *
     * @param halfLife place of the half-life of its excess
     * @param useAmps crest that it counts with while another system starts; 0 where all start on one clock
     * @param least by source: how much of it the phases of that see at least, over their number; {@link #NEVER} where it
     *     cannot be below it
     */
    record Part(Load load, double baseAmps, double excessAmps, int halfLife, double useAmps, double[] least) {}

    /**
     * What one output closes.
     *
     * @param clock place of the command that it comes on by
     * @param first place of its first part among all parts
     */
    record Closed(int clock, int first, List<Part> parts) {

        /** Whether all of it may be below a source. */
        boolean mayBeBelow(int source) {
            return parts.stream().allMatch(part -> part.least()[source] < NEVER);
        }
    }

    final Project project;
    final ProjectIndex index;

    /** Places of the supply and of further sources among the distribution's points. */
    final int[] sources;

    /** Commands with a clock of their own; one without a name where all start together. */
    final List<Optional<String>> clocks;

    /** Whether, while one system starts, the others may be in full use. */
    final boolean hasClocks;

    final List<Closed> closed = new ArrayList<>();
    final List<Part> standing = new ArrayList<>();
    final double[] halfLifeSeconds;
    final TimeGrid grid;

    private final Seats seats;
    private final SceneCurrents scenes;

    PlantLoads(Project project, Seats seats) {
        this.project = project;
        this.seats = seats;
        index = new ProjectIndex(project);
        scenes = SceneCurrents.of(index);
        hasClocks = project.hasClocks();
        clocks = hasClocks
                ? project.systems().stream()
                        .map(SwitchedSystem::id)
                        .map(Optional::of)
                        .toList()
                : List.of(Optional.empty());
        sources = seats.distribution().points().stream()
                .filter(point -> point.index() == 0 || point.isFurtherSource())
                .mapToInt(Point::index)
                .toArray();
        List<Load> loads = project.loads().stream()
                .map(each -> index.load(each.id()).orElseThrow())
                .toList();
        halfLifeSeconds = loads.stream()
                .filter(Load::switched)
                .mapToDouble(load -> load.inrushHalfMillis() / 1000)
                .distinct()
                .sorted()
                .toArray();
        loads.stream().filter(load -> !load.switched()).forEach(load -> standing.add(part(load)));
        close(loads);
        grid = TimeGrid.upTo(BoardEnds.horizonSeconds(project), project, MOST_INSTANTS);
    }

    /** Whether every load has a place; else no plan keeps every rule, and no argument says anything. */
    boolean allFit() {
        return closed.stream().allMatch(each -> isSomewhere(each.parts()))
                && standing.stream().allMatch(each -> isSomewhere(List.of(each)));
    }

    /** The command that a load comes on by; empty for a load of no system where each has its own. */
    private OptionalInt clock(Load load) {
        int at = hasClocks ? clocks.indexOf(load.system()) : 0;
        return at < 0 ? OptionalInt.empty() : OptionalInt.of(at);
    }

    private boolean isSomewhere(List<Part> parts) {
        return Arrays.stream(sources(parts)).findAny().isPresent();
    }

    /** Places of the sources that all of these may be below. */
    private int[] sources(List<Part> parts) {
        Closed all = new Closed(0, 0, parts);
        return IntStream.range(0, sources.length).filter(all::mayBeBelow).toArray();
    }

    private void close(Collection<Load> loads) {
        Map<String, List<Load>> together = new LinkedHashMap<>();
        loads.stream()
                .filter(load -> load.switched() && clock(load).isPresent())
                .forEach(load -> together.computeIfAbsent(load.comesWith().orElse(load.id()), any -> new ArrayList<>())
                        .add(load));
        int first = 0;
        for (List<Load> each : together.values()) {
            List<Part> parts = each.stream().map(this::part).toList();
            closed.add(new Closed(clock(each.get(0)).getAsInt(), first, parts));
            first += parts.size();
        }
    }

    private Part part(Load load) {
        InrushEnvelope envelope = InrushEnvelope.of(load, 0);
        double use = hasClocks ? Math.sqrt(2) * Math.max(load.idleAmps(), scenes.mostAmps(load)) : 0;
        double base = load.switched() || !hasClocks ? envelope.baseAmps() : 0;
        int halfLife = Arrays.binarySearch(halfLifeSeconds, load.inrushHalfMillis() / 1000);
        return new Part(load, base, envelope.excessAmps(), halfLife, use, least(load));
    }

    private double[] least(Load load) {
        double[] least = new double[sources.length];
        Arrays.fill(least, NEVER);
        for (Seat seat : seats.of(load)) {
            for (int k = 0; k < sources.length; k++) {
                if (seat.parts().containsKey(sources[k])) {
                    double total = 0;
                    for (Phase phase : Phase.values()) {
                        total += seat.part(sources[k], phase);
                    }
                    int phases = seats.distribution()
                            .points()
                            .get(sources[k])
                            .system()
                            .phases()
                            .size();
                    least[k] = Math.min(least[k], total / phases);
                }
            }
        }
        return least;
    }
}
