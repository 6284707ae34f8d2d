package evenrise.model.measured;

import evenrise.model.measured.FieldChange.Kind;
import evenrise.model.project.Load;
import evenrise.model.project.MeasuredValue;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Takes readings into a project. A field then holds the greatest reading over the poles with all that it may be off by on
 * top, so that whatever is summed from it stays a bound. It is lowered only where somebody confirms that the load was in
 * full use, never below what an earlier visit read, never by a load that did not draw, and never by a peak: that depends on
 * the moment of closing, and another closing may bring more. What the field said, and whether that was guessed, stays
 * beside it.
 */
public final class Refit {
    private final SiteReadings readings;
    private final Predicate<String> isConfirmed;
    private final List<FieldChange> changes = new ArrayList<>();

    private Refit(SiteReadings readings, Predicate<String> isConfirmed) {
        this.readings = readings;
        this.isConfirmed = isConfirmed;
    }

    /** @param isConfirmed of which loads, by id, somebody confirms that readings were at full use */
    public static Refitted of(Project project, SiteReadings readings, Predicate<String> isConfirmed) {
        Refit refit = new Refit(readings, isConfirmed);
        Project measured =
                project.withLoads(project.loads().stream().map(refit::measured).toList());
        return ClassLearning.of(project, measured, refit.changes);
    }

    /** The greatest reading of one visit. */
    private record Greatest(double amps, double error, Visit visit) {
        double upper() {
            return roundedUp(amps + error);
        }
    }

    /** To the next ten-thousandth, so that files hold no remainders of arithmetic. */
    private static double roundedUp(double amps) {
        return Math.ceil(1e4 * amps - 1e-6) / 1e4;
    }

    private Load measured(Load load) {
        List<PoleReading> own = readings.of(load.id());
        if (own.stream().noneMatch(PoleReading::hasCurrent)) {
            return load;
        }
        List<MeasuredValue> kept = new ArrayList<>(load.measured());
        List<String> guessed = new ArrayList<>(load.guessed());
        double running =
                taken(load, MeasuredValue.RUNNING, load.runningAmps(), own, PoleReading::runningAmps, kept, guessed);
        boolean isIdleRead = own.stream().anyMatch(each -> each.idleAmps().isPresent());
        boolean idleFollows = load.idleAmps() == load.runningAmps();
        double idle = taken(
                load,
                MeasuredValue.IDLE,
                idleFollows && !isIdleRead ? running : load.idleAmps(),
                own,
                PoleReading::idleAmps,
                kept,
                guessed);
        boolean hasNoInrush = load.inrushPeakAmps().isPresent() && load.inrushAmps() <= load.baseAmps() + 1e-9;
        OptionalDouble peak = load.inrushPeakAmps();
        if (own.stream().anyMatch(each -> each.peakAmps().isPresent())) {
            peak = OptionalDouble.of(
                    taken(load, MeasuredValue.PEAK, load.inrushAmps(), own, PoleReading::peakAmps, kept, guessed));
        } else if (hasNoInrush) {
            peak = OptionalDouble.of(Math.sqrt(2) * idle);
        }
        return load.with()
                .idleAmps(idle)
                .runningAmps(Math.max(running, idle))
                .inrushPeakAmps(peak)
                .measured(kept)
                .guessed(guessed)
                .build();
    }

    /** What the field holds from now on; tells what became of it. */
    private double taken(
            Load load,
            String field,
            double stated,
            List<PoleReading> own,
            Function<PoleReading, OptionalDouble> amps,
            List<MeasuredValue> kept,
            List<String> guessed) {
        boolean isOneClosing = field.equals(MeasuredValue.PEAK);
        boolean isConfirmedHere = isConfirmed.test(load.id()) && !isOneClosing;
        boolean wasGuessed = guessed.contains(field);
        double readEarlier = load.measured().stream()
                .filter(each -> each.field().equals(field))
                .mapToDouble(MeasuredValue::upper)
                .max()
                .orElse(0);
        double now = stated;
        boolean isFirst = true;
        for (Greatest each : byVisit(own, amps)) {
            // The first visit of those that are confirmed may lower what was stated, a later one what was read before.
            boolean isDead = each.amps() <= each.error();
            boolean mayLower = isConfirmedHere && isFirst && !isDead;
            double before = now;
            now = each.upper() > before
                    ? each.upper()
                    : mayLower ? Math.min(before, Math.max(each.upper(), readEarlier)) : before;
            isFirst = false;
            boolean isTaken = now == each.upper() && (mayLower || now > before);
            kept.add(MeasuredValue.builder()
                    .field(field)
                    .value(each.amps())
                    .spread(each.error())
                    .date(each.visit().date())
                    .meter(Optional.of(each.visit().meter().name()).filter(name -> !name.isEmpty()))
                    .stated(before)
                    .guessed(wasGuessed)
                    .fullUse(isConfirmedHere)
                    .taken(isTaken)
                    .build());
            Kind kind = now < before ? Kind.LOWERED : isTaken ? Kind.RAISED : Kind.KEPT;
            changes.add(new FieldChange(
                    kind,
                    load.id(),
                    field,
                    before,
                    now,
                    wasGuessed,
                    each.amps(),
                    each.error(),
                    Optional.of(each.visit()),
                    why(kind, isOneClosing, isDead, isConfirmedHere, isTaken)));
            if (kind != Kind.KEPT) {
                guessed.remove(field);
            }
        }
        return now;
    }

    private static String why(Kind kind, boolean isOneClosing, boolean isDead, boolean isConfirmed, boolean isTaken) {
        return switch (kind) {
            case RAISED -> "read higher, with what the meter may be off by";
            case LOWERED ->
                isTaken
                        ? "confirmed to be full use"
                        : "confirmed to be full use; an earlier visit read more: that stays";
            default ->
                isOneClosing
                        ? "read lower; a peak is of one closing: it never lowers what was stated"
                        : isDead
                                ? "it did not draw, which lowers nothing"
                                : isConfirmed
                                        ? "read lower; an earlier visit read more: that stays"
                                        : "read lower; nobody confirmed full use, so what was stated stays";
        };
    }

    /** The greatest over poles of each day, the earliest day first. */
    private static List<Greatest> byVisit(List<PoleReading> own, Function<PoleReading, OptionalDouble> amps) {
        Map<String, Greatest> byDate = new TreeMap<>();
        for (PoleReading each : own) {
            amps.apply(each).ifPresent(read -> {
                Greatest one = new Greatest(read, roundedUp(each.visit().meter().errorAmps(read)), each.visit());
                byDate.merge(each.visit().date().orElse(""), one, (a, b) -> b.upper() > a.upper() ? b : a);
            });
        }
        return List.copyOf(byDate.values());
    }
}
