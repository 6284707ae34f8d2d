package evenrise.solver.app;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.TitleBlock;
import evenrise.solver.document.Imprint;
import evenrise.solver.rendering.PrintedSheets;
import evenrise.solver.rendering.SheetPictures;
import evenrise.solver.rendering.WorkPrint;
import evenrise.solver.report.PlanNames;
import evenrise.solver.report.ReworkText;
import evenrise.solver.report.WorkChangeText;
import evenrise.solver.report.WorkSheets;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.LaidOrder;
import evenrise.solver.rework.NightLimits;
import evenrise.solver.rework.Nights;
import evenrise.solver.rework.OrderChoice;
import evenrise.solver.rework.WorkMinutes;
import evenrise.solver.rework.WorkOrder;
import java.nio.file.Path;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A rework whose search is done and of which nothing is written yet: any of its cures is looked at, with the order of its
 * work as the program has it or as somebody lays it out, and one of them is written.
 *
 * @since 0.1.0
 */
public final class ReworkDraft {
    private final ReworkRequest asked;
    private final ReworkStart start;
    private final ReworkSearch.Found found;
    private final NightLimits night;
    private final TitleBlock title;
    private final boolean wasCancelled;
    private final List<FrontPoint> points;
    private final Map<FrontPoint, OrderChoice> choices = new HashMap<>();

    ReworkDraft(
            ReworkRequest asked,
            ReworkStart start,
            ReworkSearch.Found found,
            NightLimits night,
            TitleBlock title,
            boolean wasCancelled) {
        this.asked = asked;
        this.start = start;
        this.found = found;
        this.night = night;
        this.title = title;
        this.wasCancelled = wasCancelled;
        this.points = PlanNames.shown(found.front(), found.chosen());
    }

    ReworkSearch.Found found() {
        return found;
    }

    NightLimits night() {
        return night;
    }

    /** The project as it is judged: with what was measured. */
    public Project project() {
        return start.project();
    }

    /** The project as a file of it would say: with what was measured, and without what only the plan as built shows. */
    public Project stated() {
        return start.stated();
    }

    public boolean wasCancelled() {
        return wasCancelled;
    }

    /** What the plan as built breaks, and what was found to cure it. */
    public String state() {
        return ReworkText.state(found.front());
    }

    /** What was taken from the readings, and what else is to be known. */
    public List<String> notes() {
        return start.notes();
    }

    /** No plan that keeps every hard rule takes fewer moves; 0 where nothing is known. */
    public int leastMoves() {
        return found.front().leastMoves();
    }

    /** The plan as built; its number is -1. */
    public DraftedCure asBuilt() {
        return DraftedCure.of(-1, found.front(), found.front().asBuilt(), WorkMinutes.of(project()), Optional.empty());
    }

    /** By rising minutes, numbered from 0. */
    public List<DraftedCure> cures() {
        WorkMinutes minutes = WorkMinutes.of(project());
        Front front = found.front();
        return points.stream()
                .map(each -> DraftedCure.of(points.indexOf(each), front, each, minutes, known(each)))
                .toList();
    }

    /** Which of them the command would take. */
    public int chosen() {
        return points.indexOf(found.chosen());
    }

    /** A cure's plan, as it is written. */
    public Plan plan(int cure) {
        return point(cure).plan();
    }

    /** The program's order of a cure's work. */
    public DraftedWork order(int cure) {
        return drafted(cure, Optional.empty());
    }

    /**
     * The order of a cure's work as somebody lays it out, whatever it breaks.
     *
     * @param stages numbers of the changes that each makes
     */
    public DraftedWork order(int cure, List<List<Integer>> stages) {
        return drafted(cure, Optional.of(stages));
    }

    private DraftedWork drafted(int cure, Optional<List<List<Integer>>> stages) {
        LaidOrder laid = laid(cure);
        WorkOrder order = workOrder(cure, laid, stages);
        return DraftedWork.of(sheets(order), WorkChangeText.of(laid.changes()), laid.sets(order), stages.isPresent());
    }

    private LaidOrder laid(int cure) {
        return new LaidOrder(start.plant(), point(cure).plan(), night);
    }

    private WorkOrder workOrder(int cure, LaidOrder laid, Optional<List<List<Integer>>> stages) {
        return stages.map(sets -> laid.of(sets)
                        .orElseThrow(() -> new JobFailed(
                                JobFailed.Reason.REQUEST,
                                "stages make each change once, and each stage at least one. Begin with the program's"
                                        + " order.")))
                .orElseGet(() -> choice(point(cure)).order());
    }

    private FrontPoint point(int cure) {
        if (cure < 0 || cure >= points.size()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "there is no cure " + cure + " here. Search again.");
        }
        return points.get(cure);
    }

    OrderChoice choice(FrontPoint of) {
        synchronized (choices) {
            if (choices.containsKey(of)) {
                return choices.get(of);
            }
        }
        OrderChoice found = OrderChoice.of(start.plant(), of.plan(), night, asked.deadAtOnce());
        synchronized (choices) {
            choices.putIfAbsent(of, found);
            return choices.get(of);
        }
    }

    /** What is known so far. */
    private Optional<DraftedCure.Night> known(FrontPoint of) {
        synchronized (choices) {
            return Optional.ofNullable(choices.get(of)).map(choice -> night(choice.order()));
        }
    }

    private DraftedCure.Night night(WorkOrder order) {
        boolean areStated = !night.windowsMinutes().isEmpty();
        List<Double> windows = areStated
                ? night.windowsMinutes()
                : Collections.nCopies(order.stages().size(), OrderChoice.SHIFT_MINUTES);
        Nights.Layout layout = Nights.of(order, windows);
        return new DraftedCure.Night(
                order.stages().size(),
                order.minutes(),
                (int) layout.nights().stream()
                        .filter(each -> !each.stages().isEmpty())
                        .count(),
                areStated,
                layout.left().size(),
                order.cost().systemOffs(),
                order.cost().isolations(),
                order.cost().outages(),
                order.breaches().size());
    }

    WorkSheets sheets(WorkOrder order) {
        return WorkSheets.of(start.plant(), order, start.cautions(), night);
    }

    Imprint imprint() {
        return new Imprint(
                start.project().name(),
                asked.sheets().revision(),
                asked.sheets().date(),
                start.sha256(),
                ProgramVersion.ofThisProgram(),
                title);
    }

    /**
     * The sheets as they are printed, page by page as pictures.
     *
     * @param stages of an order by hand; empty for the program's
     */
    public DraftedSheets printed(int cure, Optional<List<List<Integer>>> stages, boolean isLetter) {
        PrintedSheets.Paper paper = isLetter ? PrintedSheets.Paper.LETTER : PrintedSheets.Paper.A4;
        WorkSheets sheets = sheets(workOrder(cure, laid(cure), stages));
        return new DraftedSheets(new SheetPictures(
                new WorkPrint(imprint(), sheets).on(List.of(paper)).get(paper)));
    }

    /**
     * Writes what {@code rework} writes, for this cure and this order.
     *
     * @param stages of an order by hand; empty for the program's
     * @throws JobFailed where the order by hand breaks something on the way
     */
    public void write(int cure, Optional<List<List<Integer>>> stages, Path target) {
        WorkOrder order = workOrder(cure, laid(cure), stages);
        if (stages.isPresent() && !order.breaches().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "the order by hand is not written: in stage "
                            + order.breaches().get(0).stage() + " "
                            + order.breaches().get(0).message()
                            + " Lay it out so that nothing is refused, or take the program's order.");
        }
        ReworkFolder folder = ReworkFolder.of(target, ReworkJob.inputs(asked));
        start.files().forEach(folder::add);
        folder.write(found.front(), point(cure), sheets(order), imprint());
    }
}
