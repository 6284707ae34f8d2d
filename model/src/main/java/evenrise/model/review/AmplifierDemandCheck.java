package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Amplifier;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.Programme;
import evenrise.model.project.Role;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether the currents that the project states for amplifiers are what their outputs need at the stated programme. */
final class AmplifierDemandCheck implements ElectricalCheck {
    private static final String ID = "amplifier-demand";

    private static final String RUNNING = "running_a as stated, and 2 % for rounding";

    /** Rounding of datasheets: a current is called too low only when it is lower by more than this. */
    private static final double ROUNDING_RATIO = 1.02;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<String> unknown = new ArrayList<>();
        for (Load load : layout.project().loads()) {
            Optional<Amplifier> amplifier = load.equipment().flatMap(Equipment::amplifier);
            if (amplifier.isPresent()) {
                review(layout, load, amplifier.get(), findings);
            } else if (load.role() == Role.AMPLIFIER) {
                unknown.add(load.id());
            }
        }
        findings.notChecked(ID, unknown, "equipment.amplifier");
    }

    private static void review(Layout layout, Load load, Amplifier amplifier, Remarks findings) {
        findings.made(ID, load.id());
        double idle = Demand.idleAmps(layout, load, amplifier);
        double eighth = Demand.amps(layout, load, amplifier, Programme.EIGHTH);
        double third = Demand.amps(layout, load, amplifier, Programme.THIRD);
        boolean isLimited = amplifier.programme() == Programme.THIRD;
        Quantity atEighth = new Quantity(load.id(), "current at 1/8 power", eighth, "A");
        double stated = ROUNDING_RATIO * load.runningAmps();
        findings.add(new Quantity(load.id(), "current at idle", idle, "A")
                .atMost(ROUNDING_RATIO * load.idleAmps(), "idle_a as stated, and 2 % for rounding"));
        findings.add(isLimited ? atEighth : atEighth.atMost(stated, RUNNING));
        findings.add(new Quantity(load.id(), "current at 1/3 power", third, "A")
                .atMost(
                        isLimited ? Math.min(stated, load.breakerAmps()) : load.breakerAmps(),
                        isLimited && stated < load.breakerAmps() ? RUNNING : "rating of its breaker"));
        double driven = isLimited ? third : eighth;
        String duty = (isLimited ? "1/3" : "1/8") + " of rated output by " + Demand.source(amplifier);
        low(load, "running_a", load.runningAmps(), driven, duty, findings);
        low(load, "idle_a", load.idleAmps(), idle, "idle by the datasheet", findings);
        if (third > load.breakerAmps()) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("trips-when-limited")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .place(load.id())
                    .figure(third)
                    .limit(load.breakerAmps())
                    .unit("A")
                    .clause("")
                    .message("load " + Phrase.quoted(load.id()) + " draws " + HUNDREDTHS.amps(third, load.breakerAmps())
                            + " at 1/3 of rated output, its breaker is rated "
                            + HUNDREDTHS.amps(load.breakerAmps(), third)
                            + ": heavily limited programme may trip it")
                    .cure("split the amplifiers over two breakers")
                    .build());
        }
    }

    private static void low(
            Load load, String field, double statedAmps, double neededAmps, String when, Remarks findings) {
        if (neededAmps > ROUNDING_RATIO * statedAmps) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("understated-draw")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .place(load.id())
                    .figure(neededAmps)
                    .limit(statedAmps)
                    .unit("A")
                    .clause("")
                    .message("load " + Phrase.quoted(load.id()) + " draws " + HUNDREDTHS.amps(neededAmps, statedAmps)
                            + " at " + when + ", " + field + " states " + HUNDREDTHS.amps(statedAmps, neededAmps))
                    .cure("raise " + field)
                    .build());
        }
    }
}
