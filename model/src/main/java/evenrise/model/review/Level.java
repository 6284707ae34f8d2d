package evenrise.model.review;

import evenrise.model.electrical.LinePower;
import evenrise.model.project.Load;
import evenrise.model.project.PhaseSystem;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;

/** The system and voltage that something lives at. */
record Level(PhaseSystem system, double lineToNeutralVolts) {
    /** How far a stated voltage may be from that of a system: hard rule voltage. */
    private static final double SAME = 0.05;

    static Level of(Point point) {
        return new Level(point.system(), point.lineToNeutralVolts());
    }

    /** Where a load sits; while it sits nowhere, where it may: a panel that it allows, at the voltage that it states. */
    static Level of(Layout layout, Load load) {
        return layout.placement(load.id())
                .flatMap(Placement::panel)
                .or(() -> layout.project().panels().stream()
                        .filter(panel ->
                                load.panels().isEmpty() || load.panels().contains(panel.id()))
                        .filter(panel -> suits(load, layout.distribution().of(panel)))
                        .findFirst())
                .map(panel -> of(layout.distribution().of(panel)))
                .orElseGet(() -> of(layout.distribution().points().get(0)));
    }

    private static boolean suits(Load load, Point point) {
        return load.lineToNeutralVolts().isEmpty()
                || Math.abs(load.lineToNeutralVolts().getAsDouble() / point.lineToNeutralVolts() - 1) <= SAME;
    }

    double voltAmpsPerAmp(int poles) {
        return LinePower.voltAmpsPerAmp(system, poles, lineToNeutralVolts);
    }

    /** Between what feeds a load: line and neutral, or two lines. */
    double volts(int poles) {
        return poles == 3 ? voltAmpsPerAmp(3) / Math.sqrt(3) : voltAmpsPerAmp(poles);
    }
}
