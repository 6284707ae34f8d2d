package evenrise.solver;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.GeneralCodingRules;

/** Holds the arrows between packages, each drawn in DEVELOPERS.md, and who may know which library. */
@AnalyzeClasses(
        packages = "evenrise",
        importOptions = {ImportOption.DoNotIncludeTests.class, ArchitectureTest.WithoutFixtures.class})
class ArchitectureTest {
    /** Leaves out the jar with the model's tests. */
    static final class WithoutFixtures implements ImportOption {
        @Override
        public boolean includes(Location location) {
            return !location.contains("-tests.jar");
        }
    }

    @ArchTest
    static final ArchRule arrowsPointFromTheCommandLineToTheModel = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("cli")
            .definedBy("evenrise.solver.cli..")
            .layer("document")
            .definedBy("evenrise.solver.document..")
            .layer("compare")
            .definedBy("evenrise.solver.compare..")
            .layer("intake")
            .definedBy("evenrise.solver.intake..")
            .optionalLayer("sample")
            .definedBy("evenrise.solver.sample..")
            .layer("report")
            .definedBy("evenrise.solver.report..")
            .layer("engine")
            .definedBy("evenrise.solver.engine..")
            .layer("bounds")
            .definedBy("evenrise.solver.bounds..")
            .layer("rework")
            .definedBy("evenrise.solver.rework..")
            .layer("exact")
            .definedBy("evenrise.solver.exact..")
            .layer("model")
            .definedBy("evenrise.model..")
            .whereLayer("cli")
            .mayNotBeAccessedByAnyLayer()
            .whereLayer("compare")
            .mayOnlyBeAccessedByLayers("cli", "report")
            .whereLayer("intake")
            .mayOnlyBeAccessedByLayers("cli", "report")
            .whereLayer("sample")
            .mayOnlyBeAccessedByLayers("cli")
            .whereLayer("document")
            .mayOnlyBeAccessedByLayers("cli")
            .whereLayer("report")
            .mayOnlyBeAccessedByLayers("cli", "document")
            .whereLayer("rework")
            .mayOnlyBeAccessedByLayers("cli", "report")
            .whereLayer("engine")
            .mayOnlyBeAccessedByLayers("cli", "report", "exact", "rework", "compare")
            .whereLayer("exact")
            .mayOnlyBeAccessedByLayers("cli")
            .whereLayer("bounds")
            .mayOnlyBeAccessedByLayers("cli", "report", "exact", "compare")
            .whereLayer("model")
            .mayOnlyBeAccessedByLayers(
                    "cli", "report", "engine", "exact", "bounds", "sample", "intake", "rework", "compare");

    @ArchTest
    static final ArchRule arrowsInsideTheModelPointFromFilesToRecords = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("file")
            .definedBy("evenrise.model.file..")
            .layer("check")
            .definedBy("evenrise.model.check..")
            .layer("evaluation")
            .definedBy("evenrise.model.evaluation..")
            .layer("review")
            .definedBy("evenrise.model.review..")
            .layer("scatter")
            .definedBy("evenrise.model.scatter..")
            .layer("event")
            .definedBy("evenrise.model.event..")
            .layer("rules")
            .definedBy("evenrise.model.rules..")
            .layer("electrical")
            .definedBy("evenrise.model.electrical..")
            .layer("sequence")
            .definedBy("evenrise.model.sequence..")
            .layer("plan")
            .definedBy("evenrise.model.plan..")
            .layer("project")
            .definedBy("evenrise.model.project..")
            .layer("contract")
            .definedBy("evenrise.model.contract..")
            .layer("solver")
            .definedBy("evenrise.solver..")
            .whereLayer("file")
            .mayOnlyBeAccessedByLayers("solver")
            .whereLayer("check")
            .mayOnlyBeAccessedByLayers("file", "solver")
            .whereLayer("evaluation")
            .mayOnlyBeAccessedByLayers("solver")
            .whereLayer("review")
            .mayOnlyBeAccessedByLayers("evaluation", "solver")
            .whereLayer("scatter")
            .mayOnlyBeAccessedByLayers("solver")
            .whereLayer("event")
            .mayOnlyBeAccessedByLayers("file", "check", "scatter", "solver")
            .whereLayer("rules")
            .mayOnlyBeAccessedByLayers("file", "review", "evaluation", "scatter", "event", "solver")
            .whereLayer("electrical")
            .mayOnlyBeAccessedByLayers("check", "rules", "review", "scatter", "event", "solver")
            .whereLayer("sequence")
            .mayOnlyBeAccessedByLayers("check", "rules", "review", "event", "solver")
            .whereLayer("plan")
            .mayOnlyBeAccessedByLayers(
                    "file",
                    "check",
                    "rules",
                    "review",
                    "evaluation",
                    "scatter",
                    "event",
                    "electrical",
                    "sequence",
                    "solver")
            .whereLayer("project")
            .mayOnlyBeAccessedByLayers(
                    "file",
                    "check",
                    "rules",
                    "review",
                    "evaluation",
                    "scatter",
                    "event",
                    "electrical",
                    "sequence",
                    "plan",
                    "solver");

    @ArchTest
    static final ArchRule onlyTheFilePackageKnowsJsonLibraries = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.model.file..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("com.fasterxml..", "com.github.victools..", "org.yaml..", "org.snakeyaml..");

    @ArchTest
    static final ArchRule onlyTheEngineKnowsOptaPlanner = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.solver.engine..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.optaplanner..");

    @ArchTest
    static final ArchRule onlyTheProofsKnowTheExactSolver = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.solver.exact..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("com.google.ortools..");

    @ArchTest
    static final ArchRule onlyTheIntakeReadsSpreadsheets = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.solver.intake..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.dhatim.fastexcel.reader..");

    @ArchTest
    static final ArchRule onlyTheCommandLineKnowsPicocli = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.solver.cli..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("picocli..");

    @ArchTest
    static final ArchRule onlyTheCommandLinePrints = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.solver.cli..")
            .should(GeneralCodingRules.ACCESS_STANDARD_STREAMS);

    @ArchTest
    static final ArchRule onlyTheCommandLineEndsTheProcess = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.solver.cli..")
            .should()
            .callMethod(System.class, "exit", int.class)
            .orShould()
            .callMethod(Runtime.class, "exit", int.class)
            .orShould()
            .callMethod(Runtime.class, "halt", int.class);

    @ArchTest
    static final ArchRule reportsTouchNoFile = noClasses()
            .that()
            .resideInAPackage("evenrise.solver.report..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.nio.file..", "java.io..");
}
