package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Load;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Whether anything that may happen trips a device at once that stands before many loads: the main of the supply, a feeder's
 * device, the main of a panel; and, after a deep dip in full use, a branch breaker.
 */
final class DeviceTripCheck implements ElectricalCheck {
    private static final String ID = "device-trip";
    private static final String RANGE = "range up to which the device holds";

    /** What passes through a device when something happens, as it counts at the trip. */
    private record Passing(String when, String on, double amps) {}

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<Fed> nodes = Fed.all(layout);
        List<List<TripCurrent>> currents = TripCurrent.ofAllNodes(layout);
        List<String> bare = new ArrayList<>();
        for (int node = 0; node < nodes.size(); node++) {
            List<Passing> passing = passing(layout, nodes.get(node), currents.get(node));
            String place = nodes.get(node).node();
            List<Devices.Rated> stated = (node == 0
                            ? List.of(Devices.ofSupply(layout.project().supply()))
                            : Devices.before(nodes.get(node).point()))
                    .stream().filter(each -> each.band().isPresent()).toList();
            double holds =
                    stated.stream().mapToDouble(Devices.Rated::holdsAmps).min().orElse(Double.POSITIVE_INFINITY);
            passing.forEach(each -> findings.add(
                    new Quantity(place, "current at a trip " + each.when(), each.amps(), "A").atMost(holds, RANGE)));
            stated.forEach(device -> review(layout, device, passing, findings));
            if (stated.isEmpty()) {
                bare.add(place);
            } else {
                findings.made(ID, place);
            }
        }
        findings.notChecked(
                ID,
                bare.stream().filter(NodeFigures.SUPPLY::equals).toList(),
                "the instantaneous range or curve of supply.main");
        findings.notChecked(
                ID,
                bare.stream().filter(each -> !each.equals(NodeFigures.SUPPLY)).toList(),
                "the instantaneous range or curve of feeder.device or of the panel's main");
        findings.notChecked(
                ID,
                layout.placements().stream()
                        .filter(each -> each.load().inrushPeakAmps().isEmpty())
                        .map(Placement::id)
                        .toList(),
                "inrush_peak_a; the currents at trips leave these inrushes out");
        layout.placements().stream().filter(Placement::fits).forEach(each -> branch(layout, each.load(), findings));
    }

    private static List<Passing> passing(Layout layout, Fed fed, List<TripCurrent> currents) {
        List<Passing> all = new ArrayList<>();
        currents.forEach(each -> all.add(new Passing(when(each), "on phase " + each.phase(), each.amps())));
        MotorStarting.alone(layout, fed.seen())
                .ifPresent(start -> all.add(new Passing(
                        "when motor '" + start.motor() + "' starts in service",
                        "on phase " + start.phase(),
                        start.amps())));
        return all;
    }

    private static String when(TripCurrent current) {
        if (current.event().isEmpty()) {
            return "in the sequence";
        }
        return switch (current.event().get()) {
            case RETURN -> "when the mains return";
            case RELEASE -> "when an emergency is released";
            case BOARD_FAILURE ->
                current.board().map(board -> "when board '" + board + "' fails").orElse("when a board fails");
            case DIP -> "when a deep dip is ridden through";
        };
    }

    private static void review(Layout layout, Devices.Rated device, List<Passing> passing, Remarks findings) {
        List<Passing> over = passing.stream()
                .filter(each -> each.amps() > device.holdsAmps() + 1e-9)
                .sorted(Comparator.comparingDouble(Passing::amps).reversed())
                .toList();
        if (over.isEmpty()) {
            return;
        }
        Passing worst = over.get(0);
        boolean surely = worst.amps() > device.tripsAmps() + 1e-9;
        String more = over.size() == 1
                ? ""
                : "; also "
                        + over.stream()
                                .skip(1)
                                .map(each -> each.when() + " (" + HUNDREDTHS.amps(each.amps()) + ")")
                                .collect(Collectors.joining(", "));
        findings.add(Remark.builder()
                .check(ID)
                .kind("device-trips")
                .grade(surely ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                .place(device.place())
                .figure(worst.amps())
                .limit(surely ? device.tripsAmps() : device.holdsAmps())
                .unit("A")
                .message(device.text() + "; " + worst.when() + " at most " + HUNDREDTHS.amps(worst.amps())
                        + " rms over a half-cycle pass " + worst.on() + ": it " + (surely ? "trips" : "may trip")
                        + more)
                .cure("spread or limit the inrush, or set its range higher" + FaultCure.room(layout, device.place()))
                .build());
    }

    /** In full use; its switch-on from rest is the check of breakers' own. */
    private static void branch(Layout layout, Load load, Remarks findings) {
        Devices.Rated breaker = Devices.ofBranch(load);
        double use = Math.max(load.runningAmps(), load.idleAmps());
        double frequency = layout.project().supply().frequencyHertz();
        double half = load.inrushHalfMillis() / 1000;
        double fromRest = TripEquivalent.inrushAmps(load.idleAmps(), load.inrushAmps(), half, frequency);
        double inUse = fromRest + use - load.idleAmps();
        if (breaker.band().isPresent() && load.inrushPeakAmps().isPresent()) {
            findings.made(ID, load.id());
            findings.add(new Quantity(load.id(), "current at its breaker after a deep dip in full use", inUse, "A")
                    .atMost(breaker.holdsAmps(), RANGE));
        }
        if (breaker.band().isEmpty() || fromRest > breaker.holdsAmps() || inUse <= breaker.holdsAmps() + 1e-9) {
            return;
        }
        boolean surely = inUse > breaker.tripsAmps() + 1e-9;
        findings.add(Remark.builder()
                .check(ID)
                .kind("trips-after-dip")
                .grade(surely ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                .place(load.id())
                .figure(inUse)
                .limit(surely ? breaker.tripsAmps() : breaker.holdsAmps())
                .unit("A")
                .message(breaker.text() + "; after a deep dip in full use the load draws " + HUNDREDTHS.amps(inUse)
                        + " rms over a half-cycle: it " + (surely ? "trips" : "may trip"))
                .cure("limit the load's inrush, or put fewer devices on the breaker")
                .build());
    }
}
