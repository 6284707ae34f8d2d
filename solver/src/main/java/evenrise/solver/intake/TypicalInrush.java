package evenrise.solver.intake;

import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.OutputStage;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What is usual at switch-on for a load that states no inrush, by its kind of gear: a guess, to be replaced by a datasheet.
 *
 * @param kind of gear, by its equipment, role and name
 * @param ratio crest at switch-on over the crest of the running current
 * @param source where the figures come from, and what others tell
 */
public record TypicalInrush(
        String load, String name, String kind, double ratio, double peakAmps, double halfMillis, String source) {

    /** What stands for an absent {@code inrush_half_ms}. */
    private static final double UNSTATED_MILLIS = 10;

    /** One for each load that states none, unswitched ones, too: theirs comes when the mains return. */
    public static List<TypicalInrush> of(Project project) {
        return project.loads().stream()
                .filter(load -> load.inrushPeakAmps().isEmpty())
                .map(TypicalInrush::of)
                .toList();
    }

    /** The project with these in the place of nothing, each marked as guessed. */
    public static Project into(Project project) {
        return project.withLoads(project.loads().stream()
                .map(load -> load.inrushPeakAmps().isPresent() ? load : of(load).in(load))
                .toList());
    }

    private static TypicalInrush of(Load load) {
        Gear gear = gear(load);
        Gear.Usual usual = gear.usual();
        return new TypicalInrush(
                load.id(),
                load.name(),
                gear.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                usual.inrushRatio(),
                tenthsUp(Math.max(usual.inrushPeakAmps(load.runningAmps()), load.baseAmps())),
                states(load) ? load.inrushHalfMillis() : usual.halfMillis(),
                gear.inrushSource());
    }

    /** A half-life other than the one of a load that says nothing of it was stated, and stays. */
    private static boolean states(Load load) {
        return load.inrushHalfMillis() != UNSTATED_MILLIS;
    }

    private static double tenthsUp(double amps) {
        return Math.ceil(10 * amps - 1e-9) / 10;
    }

    private static Gear gear(Load load) {
        if (load.equipment().flatMap(Equipment::motor).isPresent()) {
            return Gear.MOTOR;
        }
        return load.equipment()
                .flatMap(Equipment::amplifier)
                .map(it -> it.outputStage() == OutputStage.SWITCHING ? Gear.AMPLIFIER : Gear.TOROID_AMPLIFIER)
                .orElseGet(() -> Gear.of(load.role(), load.name()));
    }

    private Load in(Load load) {
        List<String> guessed = new ArrayList<>(load.guessed());
        (states(load) ? List.of("inrush_peak_a") : List.of("inrush_peak_a", "inrush_half_ms"))
                .stream().filter(field -> !guessed.contains(field)).forEach(guessed::add);
        return load.with()
                .inrushPeakAmps(peakAmps)
                .inrushHalfMillis(halfMillis)
                .guessed(guessed)
                .build();
    }
}
