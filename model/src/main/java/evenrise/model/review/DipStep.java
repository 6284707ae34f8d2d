package evenrise.model.review;

import evenrise.model.electrical.source.DipCourse;
import evenrise.model.electrical.source.Instant;
import evenrise.model.electrical.source.Terminals;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** One switch-on as the voltage between some terminals of one node sees it. Percentages are of the nominal voltage. */
final class DipStep {
    /** The voltages at the switch-on and later, if nothing else is switched. */
    interface Aftermath {
        Instant after(double seconds);

        /** The longest of the inrushes'. */
        double halfLifeSeconds();

        /** Half a period. */
        double flatSeconds();
    }

    private final String node;
    private final String label;
    private final Terminals at;
    private final double atSeconds;
    private final String load;
    private final double steadyLowPercent;
    private final Aftermath aftermath;
    private Dip phasors;
    private Dip bound;

    /**
     * @param label how messages call the node
     * @param load that switches, the greatest of those at the same instant that are fed between these terminals
     * @param steadyPercent the voltage before, of which no inrush is left
     */
    DipStep(
            String node,
            String label,
            Terminals at,
            double atSeconds,
            String load,
            double steadyPercent,
            Aftermath aftermath) {
        this.node = node;
        this.label = label;
        this.at = at;
        this.atSeconds = atSeconds;
        this.load = load;
        this.steadyLowPercent = 100 - steadyPercent;
        this.aftermath = aftermath;
    }

    String node() {
        return node;
    }

    Terminals at() {
        return at;
    }

    double atSeconds() {
        return atSeconds;
    }

    String load() {
        return load;
    }

    /** By which the voltage is low already; negative where it is high. */
    double steadyLowPercent() {
        return steadyLowPercent;
    }

    /** More than phasors and bound may make of {@link Dip#lowPercent}; quick. */
    double mostLowPercent() {
        Instant now = aftermath.after(0);
        return Math.min(100, 100 - now.steadyPercent(node, at) + now.reachPercent(node, at));
    }

    double mostHighPercent() {
        Instant now = aftermath.after(0);
        return now.steadyPercent(node, at) - 100 + now.reachPercent(node, at);
    }

    double mostFallPercent() {
        return mostLowPercent() - steadyLowPercent;
    }

    double mostRisePercent() {
        return mostHighPercent() + steadyLowPercent;
    }

    /** By phasors, at the worst angle that all inrush may have. */
    Dip phasors() {
        if (phasors == null) {
            phasors = dip(
                    instant -> instant.phasors(node, at).lowPercent(),
                    instant -> instant.phasors(node, at).highPercent());
        }
        return phasors;
    }

    /** Whatever the angles of inrush are, and however steady loads answer. */
    Dip bound() {
        if (bound == null) {
            Instant.Span now = aftermath.after(0).bound(node, at);
            Dip known = phasors();
            bound = dip(
                    Math.max(now.lowPercent(), known.lowPercent()),
                    Math.max(now.highPercent(), known.highPercent()),
                    instant -> instant.bound(node, at).lowPercent(),
                    instant -> instant.bound(node, at).highPercent());
        }
        return bound;
    }

    /** By phasors, all inrush at the power factor of its load in service. */
    double statedDipPercent() {
        return Math.max(0, 100 - aftermath.after(0).statedPercent(node, at) - steadyLowPercent);
    }

    /** As messages begin. */
    String text() {
        return String.format(
                Locale.ROOT, "when load '%s' comes on at %.2f s, %s %s", load, atSeconds, label, at.text());
    }

    private Dip dip(ToDoubleFunction<Instant> low, ToDoubleFunction<Instant> high) {
        Instant now = aftermath.after(0);
        return dip(low.applyAsDouble(now), high.applyAsDouble(now), low, high);
    }

    private Dip dip(
            double lowPercent, double highPercent, ToDoubleFunction<Instant> low, ToDoubleFunction<Instant> high) {
        return new Dip(this, lowPercent, highPercent, course(low), course(high));
    }

    private DipCourse course(ToDoubleFunction<Instant> percent) {
        return new DipCourse(
                seconds -> percent.applyAsDouble(aftermath.after(seconds)),
                aftermath.flatSeconds(),
                aftermath.halfLifeSeconds());
    }
}
