package evenrise.model.electrical.source;

import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Between which conductors a voltage is read.
 *
 * @param to the other line; empty for neutral
 */
public record Terminals(Phase from, Optional<Phase> to) {
    public static Terminals neutral(Phase phase) {
        return new Terminals(phase, Optional.empty());
    }

    public static Terminals lines(Phase from, Phase to) {
        return from.compareTo(to) <= 0 ? new Terminals(from, Optional.of(to)) : new Terminals(to, Optional.of(from));
    }

    /** Every phase to neutral, then every pair of lines. */
    public static List<Terminals> all(PhaseSystem system) {
        List<Terminals> all = new ArrayList<>();
        system.phases().forEach(phase -> all.add(neutral(phase)));
        for (Phase from : system.phases()) {
            system.phases().stream().filter(to -> to.compareTo(from) > 0).forEach(to -> all.add(lines(from, to)));
        }
        return all;
    }

    /** What a load whose poles touch {@code phases} is fed with: to neutral with one pole, between lines with more. */
    public static List<Terminals> of(List<Phase> phases) {
        List<Phase> distinct = phases.stream().distinct().sorted().toList();
        if (distinct.size() == 1) {
            return List.of(neutral(distinct.get(0)));
        }
        List<Terminals> pairs = new ArrayList<>();
        for (int i = 0; i < distinct.size(); i++) {
            for (int j = i + 1; j < distinct.size(); j++) {
                pairs.add(lines(distinct.get(i), distinct.get(j)));
            }
        }
        return pairs;
    }

    /** Of the voltages to neutral. */
    public Phasor volts(LineValues toNeutral) {
        return to.map(other -> toNeutral.line(from).minus(toNeutral.line(other)))
                .orElseGet(() -> toNeutral.line(from));
    }

    /** As messages call it. */
    public String text() {
        return to.map(other -> "between lines " + from + " and " + other).orElse("phase " + from);
    }
}
