package evenrise.solver;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.constructors;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Holds the arrows between packages, draws them in DEVELOPERS.md, and holds who may know which library. */
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

    /** Set to draw the map in DEVELOPERS.md anew instead of comparing it. */
    private static final String REFRESH = "evenrise.refresh";

    private static final DescribedPredicate<JavaClass> DOOR = DescribedPredicate.describe(
            "types of the door, of the model and of Java",
            type -> type.isPrimitive()
                    || type.getPackageName().startsWith("java.")
                    || type.getPackageName().startsWith("evenrise.model.")
                    || type.getPackageName().equals("evenrise.solver.app") && isPublic(type));

    private static final DescribedPredicate<JavaClass> IN_THE_DOOR = DescribedPredicate.describe(
            "types of the door", type -> type.getPackageName().equals("evenrise.solver.app") && isPublic(type));

    private static boolean isPublic(JavaClass type) {
        return type.getModifiers().contains(JavaModifier.PUBLIC)
                && type.getEnclosingClass().map(ArchitectureTest::isPublic).orElse(true);
    }

    private static final Path PAGE = Path.of("../DEVELOPERS.md");
    private static final String BEGIN = "<!-- rooms: drawn by ArchitectureTest, do not edit -->\n\n";
    private static final String END = "\n<!-- end of rooms -->";

    @ArchTest
    static void everyArrowPointsDownAndIsNamed(JavaClasses classes) throws IOException {
        Rooms rooms = new Rooms(classes);
        Files.createDirectories(Path.of("target"));
        Files.writeString(Path.of("target/rooms.txt"), rooms.drawn());
        System.out.printf(
                "%d rooms, %d arrows, 0 up, 0 circles, where this test is green; classes: solver/target/rooms.txt%n",
                Rooms.FROM_THE_GROUND_UP.size(), rooms.arrowCount());

        assertThat(rooms.faults()).isEmpty();
    }

    @ArchTest
    static void theMapForDevelopersIsWhatTheRoomsSay(JavaClasses classes) throws IOException {
        String page = Files.readString(PAGE);
        int begin = page.indexOf(BEGIN) + BEGIN.length();
        String drawn = page.substring(0, begin) + Rooms.map() + page.substring(page.indexOf(END));
        if (Boolean.getBoolean(REFRESH)) {
            Files.writeString(PAGE, drawn);
        }

        assertThat(Files.readString(PAGE))
                .as("the map of DEVELOPERS.md; -Devenrise.refresh=true draws it anew")
                .isEqualTo(drawn);
    }

    /** Two classes of one name would be two ideas under one word, or one idea twice; names inside a class go with its own. */
    @ArchTest
    static void noSimpleNameStandsForTwoIdeas(JavaClasses classes) {
        Map<String, Set<String>> rooms = new TreeMap<>();
        classes.stream()
                .filter(type -> !type.isNestedClass() && !type.getSimpleName().equals("package-info"))
                .forEach(type -> rooms.computeIfAbsent(type.getSimpleName(), any -> new TreeSet<>())
                        .add(type.getPackageName()));

        rooms.values().removeIf(in -> in.size() == 1);

        assertThat(rooms).as("names of several classes, and their packages").isEmpty();
    }

    /** Public types of the door show records of the model, one another, and the Java library; nothing internal. */
    @ArchTest
    static final ArchRule theDoorShowsNothingInternal = methods()
            .that()
            .areDeclaredInClassesThat(IN_THE_DOOR)
            .and()
            .arePublic()
            .should(showOnly(DOOR));

    @ArchTest
    static final ArchRule theDoorIsBuiltFromNothingInternal = constructors()
            .that()
            .areDeclaredInClassesThat(IN_THE_DOOR)
            .and()
            .arePublic()
            .should(showOnly(DOOR));

    private static ArchCondition<JavaCodeUnit> showOnly(DescribedPredicate<JavaClass> allowed) {
        return new ArchCondition<>("show only types of the door, of the model and of Java") {
            @Override
            public void check(JavaCodeUnit unit, ConditionEvents events) {
                Set<JavaClass> shown = new LinkedHashSet<>(unit.getReturnType().getAllInvolvedRawTypes());
                unit.getParameterTypes().forEach(type -> shown.addAll(type.getAllInvolvedRawTypes()));
                shown.stream()
                        .map(JavaClass::getBaseComponentType)
                        .filter(allowed.negate())
                        .forEach(type -> events.add(
                                SimpleConditionEvent.violated(unit, unit.getFullName() + " shows " + type.getName())));
            }
        };
    }

    @ArchTest
    static final ArchRule onlyTheFilePackageKnowsJsonLibraries = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.model.file..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("com.fasterxml..", "com.github.victools..", "org.yaml..", "org.snakeyaml..");

    @ArchTest
    static final ArchRule onlyTheSearchKnowsOptaPlanner = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.solver.engine.search..")
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
    static final ArchRule onlyTheTablesReadSpreadsheets = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.solver.table..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.dhatim.fastexcel.reader..");

    @ArchTest
    static final ArchRule onlyTheDeskServes = noClasses()
            .that()
            .resideOutsideOfPackage("evenrise.solver.desk..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("com.sun.net.httpserver..");

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
