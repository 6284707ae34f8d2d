package evenrise.model.rules;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.PeakInrush;
import evenrise.model.project.Load;
import evenrise.model.project.Overlap;
import evenrise.model.project.Phase;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.NodeLoads.Seen;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * Greatest instantaneous current of one node where systems have clocks of their own. P is the peak of a system alone, F
 * what its switched loads draw in use, U what all others do. One at a time: U + the greatest, over the system that starts,
 * of max(P, F) of that one and F of the rest. Any: U + Σ max(P, F).
 */
final class SystemPeaks {
    private final Overlap overlap;
    private final ToDoubleFunction<Load> inUse;
    private final double[] always = new double[Phase.values().length];
    private final List<Part> systems = new ArrayList<>();

    private record Part(String system, PeakInrush starting, double[] used) {
        double startingAmps(Phase phase) {
            return starting.amps(phase);
        }

        double usedAmps(Phase phase) {
            return used[phase.ordinal()];
        }

        double mostAmps(Phase phase) {
            return Math.max(startingAmps(phase), usedAmps(phase));
        }

        double gainAmps(Phase phase) {
            return mostAmps(phase) - usedAmps(phase);
        }
    }

    SystemPeaks(Layout layout, List<Seen> seen, Function<Load, InrushEnvelope> envelope, ToDoubleFunction<Load> inUse) {
        this.overlap = layout.project().overlap();
        this.inUse = inUse;
        Map<Optional<String>, List<Seen>> bySystem = new HashMap<>();
        for (Seen each : seen) {
            if (each.placement().isSequenced()) {
                bySystem.computeIfAbsent(each.placement().load().system(), any -> new ArrayList<>())
                        .add(each);
            } else {
                add(each, always);
            }
        }
        for (SwitchedSystem system : layout.project().systems()) {
            List<Seen> own = bySystem.getOrDefault(Optional.of(system.id()), List.of());
            double[] used = new double[Phase.values().length];
            own.forEach(each -> add(each, used));
            PeakInrush starting = PeakInrush.of(own.stream()
                    .flatMap(each -> each.draws(envelope.apply(each.placement().load())).stream())
                    .toList());
            systems.add(new Part(system.id(), starting, used));
        }
    }

    /** The peak of a phase; its time is that of the system that adds most to what is in use, from its own command. */
    PhasePeak peak(Phase phase) {
        double amps = always[phase.ordinal()];
        for (Part each : systems) {
            amps += overlap == Overlap.ANY ? each.mostAmps(phase) : each.usedAmps(phase);
        }
        Part first = starting(phase);
        if (overlap == Overlap.ONE_AT_A_TIME) {
            amps += first.gainAmps(phase);
        }
        return new PhasePeak(phase, amps, first.starting().atSeconds(phase));
    }

    /**
     * When, from the command of its system, a load counts by its envelope at the peak of a phase; empty where it counts as
     * in use.
     */
    OptionalDouble instantSeconds(Phase phase, Placement placement) {
        for (Part each : systems) {
            boolean isOwn = placement.isSequenced() && placement.load().system().equals(Optional.of(each.system()));
            boolean starts = overlap == Overlap.ANY || each == starting(phase);
            if (isOwn && starts && each.gainAmps(phase) > 0) {
                return OptionalDouble.of(each.starting().atSeconds(phase));
            }
        }
        return OptionalDouble.empty();
    }

    /** What the node carries as each system starts, in the project's order. */
    List<NodeStart> starts(List<Phase> phases) {
        return systems.stream().map(each -> start(each, phases)).toList();
    }

    private NodeStart start(Part starting, List<Phase> phases) {
        Map<Phase, Double> rests = new EnumMap<>(Phase.class);
        Map<Phase, PhasePeak> peaks = new EnumMap<>(Phase.class);
        Map<Phase, Double> used = new EnumMap<>(Phase.class);
        for (Phase phase : phases) {
            double rest = always[phase.ordinal()];
            for (Part each : systems) {
                rest += each == starting ? 0 : overlap == Overlap.ANY ? each.mostAmps(phase) : each.usedAmps(phase);
            }
            rests.put(phase, rest);
            peaks.put(
                    phase,
                    new PhasePeak(
                            phase,
                            rest + starting.startingAmps(phase),
                            starting.starting().atSeconds(phase)));
            used.put(phase, rest + starting.usedAmps(phase));
        }
        return new NodeStart(
                Optional.of(starting.system()),
                Collections.unmodifiableMap(rests),
                Collections.unmodifiableMap(peaks),
                Collections.unmodifiableMap(used));
    }

    private Part starting(Phase phase) {
        return systems.stream()
                .reduce((kept, next) -> next.startingAmps(phase) - next.usedAmps(phase)
                                > kept.startingAmps(phase) - kept.usedAmps(phase)
                        ? next
                        : kept)
                .orElseThrow();
    }

    private void add(Seen seen, double[] sums) {
        double amps = inUse.applyAsDouble(seen.placement().load());
        for (int phase = 0; phase < sums.length; phase++) {
            sums[phase] += seen.parts()[phase] * amps;
        }
    }
}
