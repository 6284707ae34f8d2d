package evenrise.model.review;

import evenrise.model.electrical.LinePower;
import evenrise.model.plan.Quantity;
import evenrise.model.project.Amplifier;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Heat into each room, at full use and at idle. What a load draws becomes heat in its room, times its {@code heat_pct};
 * what an amplifier gives to its loudspeakers does not.
 */
final class HeatCheck implements ElectricalCheck {
    private static final String ID = "heat";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public boolean judges() {
        return false;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Map<String, double[]> rooms = new TreeMap<>();
        List<String> unknown = new ArrayList<>();
        for (Load load : layout.project().loads()) {
            if (load.equipment().flatMap(Equipment::room).isEmpty()) {
                unknown.add(load.id());
                continue;
            }
            Equipment equipment = load.equipment().get();
            double part = equipment.heatPercent() / 100;
            double[] sums = rooms.computeIfAbsent(equipment.room().orElseThrow(), any -> new double[2]);
            sums[0] += part * fullWatts(layout, load, equipment);
            sums[1] += part * idleWatts(layout, load, equipment);
        }
        rooms.forEach((room, sums) -> {
            add(room, "heat at full use", sums[0], findings);
            add(room, "heat at idle", sums[1], findings);
        });
        findings.notChecked(ID, unknown, "equipment.room");
    }

    private static void add(String room, String name, double watts, Remarks findings) {
        findings.add(new Quantity(room, name, watts, "W"));
        findings.add(new Quantity(room, name, watts * LinePower.BTU_PER_HOUR_PER_WATT, "BTU/h"));
    }

    private static double fullWatts(Layout layout, Load load, Equipment equipment) {
        return equipment
                .amplifier()
                .map(it -> Demand.watts(it, it.programme()) - Demand.outputWatts(it, it.programme()))
                .orElseGet(() -> drawn(layout, load, load.runningAmps()));
    }

    private static double idleWatts(Layout layout, Load load, Equipment equipment) {
        return equipment.amplifier().map(Amplifier::idleWatts).orElseGet(() -> drawn(layout, load, load.idleAmps()));
    }

    private static double drawn(Layout layout, Load load, double amps) {
        return LinePower.watts(Demand.voltAmpsPerAmp(layout, load), amps, load.powerFactor(), load.harmonicRatio());
    }
}
