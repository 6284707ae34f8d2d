package evenrise.model.rules;

import evenrise.model.project.Load;
import evenrise.model.project.Role;
import evenrise.model.project.SwitchedSystem;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The commands of a plan: one for all, or one for each system, with a clock of its own. Of systems that start together
 * precedence is kept by each, and what a system needs counts as its own processing.
 */
public final class Clocks {
    private final Layout layout;
    private final boolean hasClocks;
    private final List<Precedence> precedences = new ArrayList<>();
    private final Map<String, Double> ends = new LinkedHashMap<>();
    private double longest;

    /**
     * Loads among which roles take precedence.
     *
     * @param system whose they are; empty where the project has none
     * @param loads that come on by its command, in the plan's order
     * @param processing that its loads wait for
     */
    public record Precedence(Optional<String> system, List<Placement> loads, List<Placement> processing) {

        /** Those of one role. */
        List<Placement> of(Role role) {
            return loads.stream().filter(each -> each.load().role() == role).toList();
        }
    }

    private Clocks(Layout layout) {
        this.layout = layout;
        this.hasClocks = layout.project().hasClocks();
        List<Placement> on =
                layout.placements().stream().filter(Placement::isSequenced).toList();
        on.forEach(each -> longest = Math.max(longest, each.on()));
        layout.project().systems().forEach(each -> ends.put(each.id(), 0.0));
        on.forEach(each -> each.load()
                .system()
                .ifPresent(system -> ends.computeIfPresent(system, (id, end) -> Math.max(end, each.on()))));
        precedences(on);
    }

    static Clocks of(Layout layout) {
        return new Clocks(layout);
    }

    /** Last switch-on of all, each system from its own command. */
    public double longestSeconds() {
        return longest;
    }

    /** Last switch-on of each command: of each system where they have clocks of their own, else one without a name. */
    public Map<Optional<String>, Double> ends() {
        Map<Optional<String>, Double> all = new LinkedHashMap<>();
        if (hasClocks) {
            ends.forEach((system, end) -> all.put(Optional.of(system), end));
        } else {
            all.put(Optional.empty(), longest);
        }
        return all;
    }

    /**
     * When a load that came on at {@code onSeconds} goes off, counted from the off command of its system: the mirror image,
     * and later by what the load, or the one that it comes with, asks for.
     */
    public double offSeconds(Load load, double onSeconds) {
        double end = hasClocks ? load.system().map(ends::get).orElse(longest) : longest;
        return end + offAfterSeconds(load) - onSeconds;
    }

    /** How much later than the mirror image a load goes off. */
    public double offAfterSeconds(Load load) {
        return load.comesWith()
                .flatMap(layout.index()::load)
                .map(Load::offAfterSeconds)
                .orElse(load.offAfterSeconds());
    }

    /** Loads among which roles take precedence: those of each system, or all. */
    public List<Precedence> precedences() {
        return precedences;
    }

    private void precedences(List<Placement> on) {
        if (ends.isEmpty()) {
            precedences.add(new Precedence(Optional.empty(), on, processing(on)));
            return;
        }
        for (SwitchedSystem system : layout.project().systems()) {
            Set<String> known = hasClocks
                    ? Set.of(system.id())
                    : needed(system.id(), layout.project().systems());
            precedences.add(new Precedence(
                    Optional.of(system.id()),
                    on.stream()
                            .filter(each -> each.load().system().equals(Optional.of(system.id())))
                            .toList(),
                    processing(on.stream()
                            .filter(each ->
                                    each.load().system().filter(known::contains).isPresent())
                            .toList())));
        }
    }

    private static List<Placement> processing(List<Placement> some) {
        return some.stream()
                .filter(each -> each.load().role() == Role.PROCESSING)
                .toList();
    }

    /** A system and all that it needs, directly or not. */
    public static Set<String> needed(String system, List<SwitchedSystem> systems) {
        Map<String, List<String>> needs = new HashMap<>();
        systems.forEach(each -> needs.put(each.id(), each.needs()));
        Set<String> known = new HashSet<>();
        Deque<String> open = new ArrayDeque<>(List.of(system));
        while (!open.isEmpty()) {
            String at = open.poll();
            if (known.add(at)) {
                open.addAll(needs.getOrDefault(at, List.of()));
            }
        }
        return known;
    }
}
