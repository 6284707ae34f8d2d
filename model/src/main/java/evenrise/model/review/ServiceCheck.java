package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;
import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLoads;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Demand of the supply and of each panel, what their limits and feeders leave, and what the next load may be and where. */
final class ServiceCheck implements ElectricalCheck {
    private static final String ID = "service";

    /** Common practice, no source: what a new installation leaves for growth. */
    private static final double USUAL_SPARE_PERCENT = 20;

    private static final int NAMED = 3;

    private static final String[] POLES = {"one-pole", "two-pole", "three-pole"};

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<Room> left = Room.all(layout).at();
        Fed.all(layout).forEach(fed -> figures(layout, fed, left.get(fed.point().index()), findings));
        List<String> rooms = new ArrayList<>();
        int mostPoles = layout.distribution().points().stream()
                .mapToInt(point -> point.system().phases().size())
                .max()
                .orElseThrow();
        for (int poles = 1; poles <= mostPoles; poles++) {
            List<NextLoad.Place> places = NextLoad.places(layout, poles);
            String kind = POLES[poles - 1];
            layout.project()
                    .panels()
                    .forEach(panel -> findings.add(
                            new Quantity(panel.id(), "next " + kind + " load", most(places, panel.id()), "A")));
            rooms.add(kind + " "
                    + places.stream().findFirst().map(ServiceCheck::text).orElse("nowhere"));
        }
        findings.add(Remark.builder()
                .check(ID)
                .kind("next-load")
                .grade(Grade.NOTE)
                .place(NodeFigures.SUPPLY)
                .unit("A")
                .clause("")
                .message("the next load may be: " + String.join("; ", rooms)
                        + ". Counted are free slots, ratings, and each feeder's device, cable and neutral where they"
                        + " are stated" + unstated(layout) + "; inrush and outputs need a new plan.")
                .build());
    }

    /** The panels whose feeder limits nothing here, since its cable is not stated or has no table. */
    private static String unstated(Layout layout) {
        List<String> bare = layout.project().panels().stream()
                .filter(panel ->
                        FeederCable.of(layout, layout.distribution().of(panel)).isEmpty())
                .map(panel -> Phrase.quoted(panel.id()))
                .toList();
        String shown = bare.stream().limit(NAMED).collect(Collectors.joining(", "));
        String more = bare.size() > NAMED ? " and " + (bare.size() - NAMED) + " more" : "";
        return bare.isEmpty() ? "" : " (no cable that could be judged: " + shown + more + ")";
    }

    private static void figures(Layout layout, Fed fed, Room room, Remarks findings) {
        double demand = fed.seen().stream()
                .map(NodeLoads.Seen::placement)
                .mapToDouble(each -> each.load().runningAmps() * Demand.voltAmpsPerAmp(layout, each.load()) / 1000)
                .sum();
        double limit = room.line().amps();
        findings.add(new Quantity(fed.node(), "demand", demand, "kVA"));
        double least = limit;
        for (Phase phase : fed.limits().phases()) {
            double spare = room.leftAmps(phase);
            least = Math.min(least, spare);
            findings.add(new Quantity(fed.node(), "spare on phase " + phase, spare, "A")
                    .atLeast(USUAL_SPARE_PERCENT * limit / 100, "common practice, no source"));
        }
        double percent = 100 * least / limit;
        if (percent < USUAL_SPARE_PERCENT) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("little-to-spare")
                    .grade(Grade.NOTE)
                    .place(fed.node())
                    .figure(percent)
                    .limit(USUAL_SPARE_PERCENT)
                    .unit("%")
                    .clause("")
                    .message("the highest phase of " + fed.label() + " has "
                            + TENTHS.percent(percent, USUAL_SPARE_PERCENT)
                            + " to spare ("
                            + HUNDREDTHS.amps(least, limit) + " of " + HUNDREDTHS.amps(limit, least) + " by "
                            + room.line().of() + "); "
                            + TENTHS.percent(USUAL_SPARE_PERCENT, percent)
                            + " is usual for growth (common practice, no source).")
                    .build());
        }
    }

    private static double most(List<NextLoad.Place> places, String panel) {
        Optional<NextLoad.Place> best =
                places.stream().filter(place -> place.panel().equals(panel)).findFirst();
        return best.map(NextLoad.Place::amps).orElse(0.0);
    }

    private static String text(NextLoad.Place place) {
        String slots = place.slots().stream().map(String::valueOf).collect(Collectors.joining("-"));
        String phases = place.phases().stream().map(Enum::name).collect(Collectors.joining());
        return String.format(
                Locale.ROOT,
                "up to %.1f A in panel '%s', slot %s, phase %s (by %s)",
                Math.floor(10 * place.amps()) / 10,
                place.panel(),
                slots,
                phases,
                place.limit());
    }
}
