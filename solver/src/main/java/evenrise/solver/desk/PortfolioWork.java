package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.PortfolioStore;
import evenrise.solver.desk.PortfolioAnswers.OpenedPlan;
import evenrise.solver.desk.PortfolioAnswers.StoreView;
import evenrise.solver.desk.PortfolioAnswers.StoredPlanView;
import evenrise.solver.desk.PortfolioAnswers.StoresView;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Portfolios in the folder: their tables, and any of their plans onto the desk. */
final class PortfolioWork implements DeskPart {
    private static final int DEPTH = 3;
    private static final int MOST_STORES = 50;
    private static final int MOST_PROJECTS = 500;

    private final Desk desk;
    private final DeskFiles files;

    PortfolioWork(Desk desk, DeskFiles files) {
        this.desk = desk;
        this.files = files;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.shown("/api/portfolios", "Portfolios in the folder", StoresView.class, () -> new StoresView(stores()));
        routes.asked(
                "/api/portfolio",
                "The plans of a portfolio",
                PortfolioRequests.Store.class,
                StoreView.class,
                asked -> view(asked.store()));
        routes.asked(
                "/api/portfolio/open",
                "A plan of a portfolio comes onto the desk",
                PortfolioRequests.OpenPlan.class,
                OpenedPlan.class,
                this::open);
    }

    private List<String> stores() {
        try (Stream<Path> all = Files.walk(files.folder(), DEPTH)) {
            return all.filter(each -> each.getFileName().toString().equals(PortfolioStore.TABLE))
                    .map(each -> files.folder()
                            .relativize(each.getParent())
                            .toString()
                            .replace('\\', '/'))
                    .sorted()
                    .limit(MOST_STORES)
                    .toList();
        } catch (IOException | UncheckedIOException e) {
            return List.of();
        }
    }

    /** One of those that are told; no other name leads anywhere. */
    private PortfolioStore store(String name) {
        if (!stores().contains(name)) {
            throw refused("there is no portfolio in '" + Harmless.shown(Harmless.cut(name, 80)) + "'.");
        }
        return PortfolioStore.in(files.folder().resolve(name));
    }

    private StoreView view(String name) {
        return new StoreView(
                name, store(name).rows().stream().map(PortfolioWork::view).toList());
    }

    private static StoredPlanView view(PortfolioStore.Row row) {
        return new StoredPlanView(
                row.project(),
                row.variant(),
                row.seed(),
                row.price(),
                row.objective(),
                row.gapPercent(),
                row.peakInrushAmps(),
                row.supplyImbalancePercent(),
                row.durationSeconds(),
                row.hardRulesBroken(),
                row.limitsBroken(),
                row.key(),
                row.failure());
    }

    private OpenedPlan open(PortfolioRequests.OpenPlan asked) {
        byte[] bytes = store(asked.store()).plan(asked.key());
        DeskState now = desk.judged().state();
        String wanted = PlanFile.read(new ByteArrayInputStream(bytes), "the plan")
                .value()
                .flatMap(Plan::madeBy)
                .map(MadeBy::projectSha256)
                .orElse("");
        if (wanted.equals(DeskFiles.sha256(files.bytes(now.project(), now.notes())))) {
            return opened(bytes, "It is a plan of the project on the desk, and lies there now.");
        }
        Optional<Reading<Project>> other = project(wanted);
        return other.isPresent()
                ? withItsProject(other.get(), bytes, asked.confirmed())
                : byThisProject(now.project(), bytes, asked.confirmed());
    }

    private OpenedPlan withItsProject(Reading<Project> other, byte[] bytes, boolean isConfirmed) {
        Project project = other.value().orElseThrow();
        if (!isConfirmed) {
            return new OpenedPlan(
                    false,
                    "It is a plan of '" + Harmless.shown(project.name())
                            + "' as another file in this folder has it, not of the project on the desk. Both can come onto"
                            + " the desk, in the place of what lies there; Undo brings that back.",
                    "Open both");
        }
        DeskState bare = DeskState.unplanned(project, other.notes());
        desk.put("a plan of a portfolio, with its project", bare.withPlan(plan(bytes, project)));
        return new OpenedPlan(true, "The plan and the project that it is of lie on the desk now.", "");
    }

    private OpenedPlan byThisProject(Project project, byte[] bytes, boolean isConfirmed) {
        Set<String> loads = project.loads().stream().map(Load::id).collect(Collectors.toSet());
        plan(bytes, project).assignments().stream()
                .map(Assignment::load)
                .filter(each -> !loads.contains(each))
                .findFirst()
                .ifPresent(load -> {
                    throw refused("it places load '" + Harmless.shown(load)
                            + "', which the project on the desk does not have, and the file of its own project is not in"
                            + " this folder. Put that file there, or run evenrise portfolio again.");
                });
        return isConfirmed
                ? opened(bytes, "The plan lies on the desk now, judged by the project that is there.")
                : new OpenedPlan(
                        false,
                        "The project's file that it is a plan of is not in this folder as it was then. It makes sense for"
                                + " the project on the desk as well, by which it would be judged: figures may be others than"
                                + " in the table.",
                        "Open it by this project");
    }

    private OpenedPlan opened(byte[] bytes, String words) {
        desk.change(
                "a plan of a portfolio",
                at -> at.state().withPlan(plan(bytes, at.state().project())));
        return new OpenedPlan(true, words, "");
    }

    private static Plan plan(byte[] bytes, Project project) {
        return PlanFile.read(new ByteArrayInputStream(bytes), "the plan", project)
                .value()
                .orElseThrow(
                        () -> refused(
                                "it makes no sense as a plan of that project. Put the project's file that it is of into this folder, or run evenrise portfolio again."));
    }

    /** The project's file of which a plan is one, to the byte. */
    private Optional<Reading<Project>> project(String sha256) {
        try (Stream<Path> all = Files.walk(files.folder(), DEPTH)) {
            return all.filter(Files::isRegularFile)
                    .filter(DeskFiles::isCalledAProject)
                    .sorted()
                    .limit(MOST_PROJECTS)
                    .map(ProjectFile::read)
                    .filter(each -> each.value().isPresent() && each.sha256().equals(sha256))
                    .findFirst();
        } catch (IOException | UncheckedIOException e) {
            return Optional.empty();
        }
    }

    private static JobFailed refused(String why) {
        return new JobFailed(JobFailed.Reason.REQUEST, why);
    }
}
