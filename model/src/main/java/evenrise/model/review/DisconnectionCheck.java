package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.breaker.Disconnection;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.plan.RemarkBuilder;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Whether a fault to the protective conductor is disconnected in time: the least current of its loop against the magnetic
 * trip, or a residual-current device. By IEC practice in a TN system; by American practice as information.
 */
final class DisconnectionCheck implements ElectricalCheck {
    private static final String ID = "disconnection";
    private static final String PATH = "NEC 250.4(A)(5)";
    private static final String TIMES = "IEC 60364-4-41 clauses 411.3.2 and 411.4.4";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Optional<Practice> practice = findings.practice(ID, layout, Remarks.loadsAndPanels(layout));
        if (practice.isEmpty()) {
            return;
        }
        Optional<FaultLoops> loops = FaultLoops.of(layout.project());
        if (loops.isEmpty()) {
            findings.notCheckedAnywhere(
                    ID, NodeFigures.SUPPLY, Remarks.loadsAndPanels(layout), FaultLoops.needs(layout.project()));
            return;
        }
        new OnePlant(layout, practice.get(), loops.get(), findings).review();
    }

    /** A loop that does not surely trip its device. */
    private record Weak(TrippingDevice device, FaultLoops.Loop loop) {
        double ratio() {
            return loop.leastAmps() / device.tripsAmps();
        }
    }

    /** Goes through the feeders and what is behind them. */
    private record OnePlant(
            Layout layout,
            Practice practice,
            FaultLoops loops,
            Remarks findings,
            List<String> bareFeeders,
            List<String> bareBranches,
            List<String> bareBands,
            List<String> bareDevices,
            List<String> slow,
            List<Weak> weak) {
        OnePlant(Layout layout, Practice practice, FaultLoops loops, Remarks findings) {
            this(
                    layout,
                    practice,
                    loops,
                    findings,
                    new ArrayList<>(),
                    new ArrayList<>(),
                    new ArrayList<>(),
                    new ArrayList<>(),
                    new ArrayList<>(),
                    new ArrayList<>());
        }

        void review() {
            Map<String, List<String>> unknown = new LinkedHashMap<>();
            for (Point point : layout.distribution().points()) {
                boolean isTransformer = point.transformer().isPresent();
                Point at = isTransformer ? layout.distribution().points().get(point.parent()) : point;
                if (point.isSupply() || point.isFurtherSource()) {
                    continue;
                }
                if (!loops.knowsOriginOf(at)) {
                    unknown.computeIfAbsent(loops.needs(at), any -> new ArrayList<>())
                            .add(point.id());
                    continue;
                }
                Optional<FaultLoops.Loop> feeder = isTransformer ? loops.ofPrimary(point) : loops.ofFeeder(point);
                if (feeder.isEmpty()) {
                    bareFeeders.add(point.id());
                    continue;
                }
                judge(TrippingDevice.ofFeeder(point), feeder.get());
                point.panel().ifPresent(panel -> branches(panel, point));
            }
            inform();
            unknown.forEach((needs, places) -> findings.notChecked(ID, places, needs + ", nor anything behind it"));
            findings.notChecked(
                    ID,
                    bareFeeders,
                    "feeder.cable and its protective_size (a length of 0 for a panel at the supply), nor anything"
                            + " behind it");
            findings.notChecked(ID, bareBranches, "circuit.cable and its protective_size");
            findings.notChecked(
                    ID,
                    bareBands,
                    "curve, circuit.instantaneous or instantaneous_ratio, or a residual_current_a of circuit or"
                            + " feeder");
            findings.notChecked(
                    ID, bareDevices, "the curve or instantaneous range of feeder.device, or feeder.residual_current_a");
            findings.notChecked(
                    ID,
                    slow,
                    "the time of the thermal part by its maker: the fault current is below the magnetic trip, so that"
                            + " 5 s are not shown");
        }

        private void branches(Panel panel, Point point) {
            for (Placement each : layout.in(panel)) {
                Optional<FaultLoops.Loop> branch = loops.ofBranch(each.load(), point);
                if (branch.isPresent()) {
                    judge(TrippingDevice.ofBranch(each.load(), point), branch.get());
                } else {
                    bareBranches.add(each.id());
                }
            }
        }

        /** American practice sets no time, so this is information; the worst in full, the others by name. */
        private void inform() {
            weak.stream().min(Comparator.comparingDouble(Weak::ratio)).ifPresent(worst -> {
                List<String> others = weak.stream()
                        .map(each -> each.device().place())
                        .filter(place -> !place.equals(worst.device().place()))
                        .toList();
                String also = others.isEmpty() ? "" : " So do " + Remarks.named(others) + ", in a lesser degree.";
                findings.add(remark(worst.device(), worst.loop())
                        .grade(Grade.NOTE)
                        .clause(PATH)
                        .message(what(worst.device(), worst.loop())
                                + "; American practice sets no time, but the path is there to let the device act."
                                + also + " "
                                + FaultCure.most(
                                        worst.device(),
                                        worst.loop(),
                                        worst.loop().volts()))
                        .cure(FaultCure.text(worst.device(), worst.loop()))
                        .build());
            });
        }

        private void judge(TrippingDevice device, FaultLoops.Loop loop) {
            findings.made(ID, device.place());
            String how = "voltage factor " + FaultCurrent.LEAST_VOLTAGE_FACTOR
                    + ", conductors as warm as they work, protective conductor as stated";
            findings.add(new Quantity(device.place(), "fault loop", loop.ohms(), "Ω", Optional.of(how)));
            double seconds = Disconnection.seconds(loop.volts(), device.ratedAmps(), device.isFinal());
            boolean isSlow =
                    practice != Practice.NEC && seconds == Disconnection.DISTRIBUTION_SECONDS && !device.isMiniature();
            Quantity least = new Quantity(
                    device.place(),
                    "least fault current to the protective conductor",
                    loop.leastAmps(),
                    "A",
                    Optional.of(how));
            // Where the thermal part may still act within 5 s, a current below the magnetic trip is no shortfall.
            findings.add(
                    isSlow && !device.tripsAt(loop.leastAmps())
                            ? least
                            : least.atLeast(device.surelyTripsAmps(), practice == Practice.NEC ? PATH : TIMES));
            if (device.tripsAt(loop.leastAmps())) {
                return;
            }
            if (device.band().isEmpty()) {
                (device.isFinal() ? bareBands : bareDevices).add(device.place());
                return;
            }
            double volts = loop.volts();
            if (practice == Practice.NEC) {
                weak.add(new Weak(device, loop));
            } else if (isSlow) {
                slow.add(device.place());
            } else {
                findings.add(remark(device, loop)
                        .grade(Grade.BREAKS)
                        .clause(TIMES)
                        .message(what(device, loop) + ", so that " + Decimals.toThousandths(seconds)
                                + " s are not shown. " + FaultCure.most(device, loop, volts))
                        .cure(FaultCure.text(device, loop))
                        .build());
            }
        }

        private static RemarkBuilder remark(TrippingDevice device, FaultLoops.Loop loop) {
            return Remark.builder()
                    .check(ID)
                    .kind("slow-disconnection")
                    .place(device.place())
                    .figure(loop.leastAmps())
                    .limit(device.tripsAmps())
                    .unit("A");
        }

        private static String what(TrippingDevice device, FaultLoops.Loop loop) {
            boolean holds = loop.leastAmps() <= device.band().orElseThrow().leastRatio() * device.ratedAmps();
            return "a fault to the protective conductor of " + device.label() + " draws " + loop.text()
                    + "; its breaker of " + HUNDREDTHS.amps(device.ratedAmps())
                    + (holds ? " does not trip at once below " : " is sure to trip at once only above ")
                    + HUNDREDTHS.amps(
                            holds ? device.band().orElseThrow().leastRatio() * device.ratedAmps() : device.tripsAmps(),
                            loop.leastAmps());
        }
    }
}
