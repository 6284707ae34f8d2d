package evenrise.solver.report;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the sheet of one stage says, however it is written.
 *
 * @param number of the stage, from 1
 * @param stages of the whole order
 * @param off what is off meanwhile
 * @param dead what is isolated, and what stays live
 * @param minutes that it takes one crew; 0 where nobody counts them
 * @param night that it is laid out in, from 1; 0 where no nights are stated or none is left
 * @param nightMinutes of that night that earlier stages take
 * @param told shutdown groups that are out meanwhile, by words
 * @param notes what else whoever works has to know
 * @param locks what is isolated and locked out
 * @param broken what is broken on the way, each with the step after which it is
 * @param pictures panels in which something changes
 */
public record WorkSheet(
        int number,
        int stages,
        String off,
        String dead,
        double minutes,
        int night,
        double nightMinutes,
        List<String> told,
        List<String> notes,
        List<Lock> locks,
        List<Line> steps,
        List<String> broken,
        List<PanelPicture> pictures,
        List<MeteredLine> currents,
        StageEnd end) {
    static final String LOCK_OUT =
            "A panel is dead while a breaker in it is worked on, and a control board while a lead on it is: switch"
                    + " off, isolate, lock and tag what feeds it, and test for the absence of voltage with a tester proven"
                    + " before and after. Breakers that are merely off leave the bus live. What stays live is named above;"
                    + " keep covers on it.";

    static final String WAY_BACK =
            "Stop, and leave locked out what is locked out. Undo what was done in this stage, as told for each step,"
                    + " the last one first, and go on from the step that makes ready, with every test. The plant then is as it was"
                    + " before this stage.";

    static final String HOW_CURRENTS_ARE_READ =
            "Sums of magnitudes; in brackets by phasors, what a meter shows. Idle is what loads draw right after"
                    + " they came on, as most nights work; full use is the most that the project states.";

    public WorkSheet {
        told = List.copyOf(told);
        notes = List.copyOf(notes);
        locks = List.copyOf(locks);
        steps = List.copyOf(steps);
        broken = List.copyOf(broken);
        pictures = List.copyOf(pictures);
        currents = List.copyOf(currents);
    }

    /**
     * A step.
     *
     * @param atMinute of the stage at which it begins; empty where nobody counts them
     * @param back how it is undone; empty where the steps that bring all back on undo it
     */
    public record Line(int number, OptionalDouble atMinute, String text, Optional<String> back) {}

    /** Something that is locked out, and where. */
    public record Lock(String what, String where) {}

    /** What is dangerous about every stage. */
    public String lockOut() {
        return LOCK_OUT;
    }

    /** What to do where a step fails. */
    public String wayBack() {
        return WAY_BACK;
    }

    /** What the figures of currents are. */
    public String howCurrentsAreRead() {
        return HOW_CURRENTS_ARE_READ;
    }
}
