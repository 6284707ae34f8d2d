package evenrise.solver.desk;

import evenrise.model.answer.PlanDifference;
import evenrise.model.contract.Harmless;
import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.desk.DeskAnswers.BranchView;
import evenrise.solver.desk.DeskAnswers.SideBySide;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;

/** Plans that were kept aside: plan files in the folder, which every command reads, each with a name of its own. */
final class Branches {
    private static final String ENDING = ".plan.json";
    private static final String NAMES = "[\\p{L}\\p{N}][\\p{L}\\p{N} _-]{0,59}";
    private static final int MOST = 100;

    private final DeskFiles files;
    private final Desk desk;

    Branches(DeskFiles files, Desk desk) {
        this.files = files;
        this.desk = desk;
    }

    /** What lies on the desk first, then the kept ones by name; all judged against the project as it is now. */
    List<BranchView> all() {
        JudgedState now = desk.judged();
        List<BranchView> all = new ArrayList<>();
        all.add(view("", true, now.state().plan(), now));
        for (Path file : kept()) {
            String name = name(file);
            Optional<Plan> plan = PlanFile.read(file, now.state().project()).value();
            all.add(
                    plan.isPresent()
                            ? view(name, false, plan.get(), now)
                            : new BranchView(
                                    name,
                                    false,
                                    false,
                                    Optional.empty(),
                                    0,
                                    0,
                                    "it is no plan of this project as it is"));
        }
        return all;
    }

    private BranchView view(String name, boolean isOnTheDesk, Plan plan, JudgedState now) {
        Layout layout = Layout.of(now.layout().index(), plan);
        Verdict verdict = isOnTheDesk ? now.verdict() : Referee.judge(layout);
        Metrics metrics = verdict.metrics();
        PlanDifference difference = PlanDifference.of(
                PlanFinisher.timed(now.state().project(), now.state().plan()),
                PlanFinisher.timed(now.state().project(), plan));
        return new BranchView(
                name,
                isOnTheDesk,
                true,
                Optional.of(metrics),
                layout.placements().size(),
                difference.loads().size() + difference.settings().size(),
                verdict.violations().isEmpty() ? "keeps every hard rule" : "breaks hard rules");
    }

    /** Keeps what lies on the desk under a name; a plan of that name is replaced. */
    void keep(String name) {
        keep(name, desk.judged());
    }

    /** Keeps what lay on the desk then. */
    void keep(String name, JudgedState now) {
        Path file = file(name);
        Plan signed = PlanFinisher.signed(
                now.state().project(),
                now.state().plan(),
                now.state()
                        .plan()
                        .madeBy()
                        .orElseGet(() -> MadeBy.builder()
                                .softwareVersion(Jobs.version())
                                .projectSha256("not written yet")
                                .seed(0)
                                .threads(1)
                                .movesAllowed(OptionalLong.of(0))
                                .build()));
        try {
            PlanFile.write(
                    signed.with()
                            .metrics(now.verdict().metrics())
                            .violations(now.verdict().violations())
                            .build(),
                    file,
                    Format.JSON);
        } catch (WriteFailed e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
        }
    }

    /** Puts a kept plan on the desk. */
    void open(String name) {
        Path file = file(name);
        desk.change("plan '" + name + "'", now -> {
            Plan plan = PlanFile.read(file, now.state().project())
                    .value()
                    .orElseThrow(() -> refused("there is no plan '" + Harmless.shown(name) + "' of this project."));
            return now.state()
                    .withPlan(plan)
                    .under(now.state().project(), now.state().notes());
        });
    }

    /** What is another in one plan than in another; an empty name is the plan on the desk. */
    SideBySide compare(String left, String right) {
        JudgedState now = desk.judged();
        Plan one = plan(left, now);
        Plan other = plan(right, now);
        return PlanPair.of(one, other, now.layout().index());
    }

    /** A kept plan with its times; an empty name is the plan on the desk. */
    Plan plan(String name, JudgedState now) {
        Plan plan = name.isEmpty()
                ? now.state().plan()
                : PlanFile.read(file(name), now.state().project())
                        .value()
                        .orElseThrow(() -> refused("there is no plan '" + Harmless.shown(name) + "' of this project."));
        return PlanFinisher.timed(now.layout().index(), plan);
    }

    /** Names of those that are kept. */
    List<String> names() {
        return kept().stream().map(Branches::name).toList();
    }

    /**
     * What a file or folder beside the project's file may be called.
     *
     * @throws JobFailed where it is something else
     */
    static String named(String name) {
        if (!canBeNamed(name)) {
            throw refused("nothing here can be called '" + Harmless.shown(Harmless.cut(name, 80))
                    + "'. Letters, digits, spaces, - and _ make a name.");
        }
        return name;
    }

    static boolean canBeNamed(String name) {
        return name.matches(NAMES);
    }

    /** @throws JobFailed where no kept plan can be called so */
    Path file(String name) {
        if (!name.matches(NAMES)
                || (name + ENDING).equals(files.plan().getFileName().toString())) {
            throw refused("a plan cannot be called '" + Harmless.shown(Harmless.cut(name, 80))
                    + "'. Letters, digits, spaces, - and _ make a name, and it is another than that of the plan on the"
                    + " desk.");
        }
        return files.folder().resolve(name + ENDING);
    }

    private List<Path> kept() {
        try (Stream<Path> all = Files.list(files.folder())) {
            return all.filter(Files::isRegularFile)
                    .filter(each -> each.getFileName().toString().endsWith(ENDING))
                    .filter(each -> !each.getFileName().equals(files.plan().getFileName()))
                    .filter(each -> name(each).matches(NAMES))
                    .sorted()
                    .limit(MOST)
                    .toList();
        } catch (IOException e) {
            return List.of();
        }
    }

    private static String name(Path file) {
        String name = file.getFileName().toString();
        return name.substring(0, name.length() - ENDING.length());
    }

    private static JobFailed refused(String why) {
        return new JobFailed(JobFailed.Reason.REQUEST, why);
    }
}
