package evenrise.solver.bounds;

import evenrise.model.project.Load;
import evenrise.model.project.Role;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Clocks;
import evenrise.solver.bounds.PlantLoads.Closed;
import evenrise.solver.bounds.PlantLoads.Part;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/** First and last instant at which each output of a plant can close, in plans whose commands end by some instant. */
final class PlantWindows {
    /** Steps of longest paths; fewer leave windows wider than they are, which is allowed. */
    private static final int MOST_STEPS = 40;

    final int[] first;
    final int[] last;
    final boolean possible;

    private PlantWindows(int[] first, int[] last, boolean possible) {
        this.first = first;
        this.last = last;
        this.possible = possible;
    }

    /** What has to be on for some time before something else comes on. */
    private record Before(int earlier, int later, double seconds) {}

    private record End(int at, double seconds) {}

    /** None of {@code later} comes on before all of {@code earlier} have, each with its time to settle. */
    private record Between(List<End> earlier, int[] later) {}

    /** The relations of a plant, worked out once. */
    static final class Order {
        private final PlantLoads plant;
        private final List<Before> before = new ArrayList<>();
        private final List<Between> between = new ArrayList<>();
        private final double[] fixedFrom;
        private final double[] fixedTo;

        /** Time: loads and relations, and systems squared. */
        Order(PlantLoads plant) {
            this.plant = plant;
            int count = plant.closed.size();
            fixedFrom = new double[count];
            fixedTo = new double[count];
            Arrays.fill(fixedTo, Double.POSITIVE_INFINITY);
            Map<String, Integer> closedBy = new HashMap<>();
            for (int i = 0; i < count; i++) {
                for (Part part : plant.closed.get(i).parts()) {
                    closedBy.put(part.load().id(), i);
                }
            }
            for (int i = 0; i < count; i++) {
                for (Part part : plant.closed.get(i).parts()) {
                    after(part.load(), i, closedBy);
                    fix(part.load(), i);
                }
            }
            roles();
        }

        private void after(Load load, int later, Map<String, Integer> closedBy) {
            for (String id : load.comesAfter()) {
                Integer earlier = closedBy.get(id);
                if (earlier != null && earlier != later) {
                    before.add(new Before(earlier, later, settleSeconds(id, earlier)));
                }
            }
        }

        private double settleSeconds(String id, int at) {
            return plant.closed.get(at).parts().stream()
                    .map(Part::load)
                    .filter(load -> load.id().equals(id))
                    .mapToDouble(Load::settleSeconds)
                    .max()
                    .orElse(0);
        }

        private void fix(Load load, int at) {
            if (load.comesWith().isEmpty() && load.fixed().onSeconds().isPresent()) {
                double on = load.fixed().onSeconds().getAsDouble();
                fixedFrom[at] = Math.max(0, on - BoundedProject.FORGIVEN_SECONDS);
                fixedTo[at] = on + BoundedProject.FORGIVEN_SECONDS;
            }
        }

        /** Precedence of roles: within each system, with the processing of what it needs where all start together. */
        private void roles() {
            List<SwitchedSystem> systems = plant.project.systems();
            if (systems.isEmpty()) {
                roles(all(), all());
                return;
            }
            for (SwitchedSystem system : systems) {
                Set<String> known =
                        plant.hasClocks ? Set.of(system.id()) : new HashSet<>(Clocks.needed(system.id(), systems));
                roles(of(Set.of(system.id())), of(known));
            }
        }

        private List<Integer> all() {
            List<Integer> all = new ArrayList<>();
            for (int i = 0; i < plant.closed.size(); i++) {
                all.add(i);
            }
            return all;
        }

        private List<Integer> of(Set<String> systems) {
            return all().stream()
                    .filter(at -> plant.closed
                            .get(at)
                            .parts()
                            .get(0)
                            .load()
                            .system()
                            .filter(systems::contains)
                            .isPresent())
                    .toList();
        }

        /** Each role goes by one point in time that stands between: the last of the one, the first of the other. */
        private void roles(List<Integer> own, List<Integer> known) {
            between.add(new Between(ends(known, Role.PROCESSING, false), starts(own, Role.AUXILIARY)));
            between.add(new Between(ends(known, Role.PROCESSING, true), starts(own, Role.AMPLIFIER)));
            between.add(new Between(ends(own, Role.AUXILIARY, false), starts(own, Role.AMPLIFIER)));
        }

        private List<End> ends(List<Integer> some, Role role, boolean settled) {
            List<End> ends = new ArrayList<>();
            for (int at : some) {
                plant.closed.get(at).parts().stream()
                        .map(Part::load)
                        .filter(load -> load.role() == role)
                        .mapToDouble(load -> settled ? load.settleSeconds() : 0)
                        .max()
                        .ifPresent(seconds -> ends.add(new End(at, seconds)));
            }
            return ends;
        }

        private int[] starts(List<Integer> some, Role role) {
            return some.stream()
                    .filter(at -> plant.closed.get(at).parts().stream()
                            .anyMatch(part -> part.load().role() == role))
                    .mapToInt(Integer::intValue)
                    .toArray();
        }

        /** Windows of plans whose commands all end by an instant. Time: steps × (relations + loads × systems). */
        PlantWindows until(int end) {
            double[] from = fixedFrom.clone();
            double[] to = fixedTo.clone();
            double latest = plant.grid.latestSeconds(end);
            for (int i = 0; i < to.length; i++) {
                to[i] = Math.min(to[i], latest);
            }
            boolean changed = true;
            for (int step = 0; changed && step < MOST_STEPS; step++) {
                changed = false;
                for (Before each : before) {
                    double seconds = each.seconds() - BoundedProject.FORGIVEN_SECONDS;
                    changed |= raise(from, each.later(), from[each.earlier()] + seconds);
                    changed |= lower(to, each.earlier(), to[each.later()] - seconds);
                }
                for (Between each : between) {
                    changed |= pass(each, from, to);
                }
            }
            return onGrid(from, to);
        }

        private static boolean pass(Between each, double[] from, double[] to) {
            boolean changed = false;
            double ready = 0;
            for (End end : each.earlier()) {
                ready = Math.max(ready, from[end.at()] + end.seconds());
            }
            double first = Double.POSITIVE_INFINITY;
            for (int later : each.later()) {
                changed |= raise(from, later, ready - BoundedProject.FORGIVEN_SECONDS);
                first = Math.min(first, to[later]);
            }
            for (End end : each.earlier()) {
                changed |= lower(to, end.at(), first - end.seconds() + BoundedProject.FORGIVEN_SECONDS);
            }
            return changed;
        }

        private static boolean raise(double[] from, int at, double seconds) {
            boolean raises = seconds > from[at];
            from[at] = raises ? seconds : from[at];
            return raises;
        }

        private static boolean lower(double[] to, int at, double seconds) {
            boolean lowers = seconds < to[at];
            to[at] = lowers ? seconds : to[at];
            return lowers;
        }

        private PlantWindows onGrid(double[] from, double[] to) {
            int[] first = new int[from.length];
            int[] last = new int[from.length];
            boolean possible = true;
            for (int i = 0; i < from.length; i++) {
                first[i] = Math.max(0, plant.grid.first(from[i]));
                last[i] = Math.min(plant.grid.count() - 1, plant.grid.last(to[i]));
                possible &= first[i] <= last[i];
            }
            return new PlantWindows(first, last, possible);
        }
    }

    /** Earliest instant at which an amplifier may come on by a command; 0 where there is none. */
    int firstAmplifier(PlantLoads plant, int clock) {
        return IntStream.range(0, first.length)
                .filter(at -> plant.closed.get(at).clock() == clock && isAmplifier(plant.closed.get(at)))
                .map(at -> first[at])
                .min()
                .orElse(0);
    }

    private static boolean isAmplifier(Closed closed) {
        return closed.parts().stream().anyMatch(part -> part.load().role() == Role.AMPLIFIER);
    }
}
