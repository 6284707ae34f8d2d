package evenrise.solver;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;

import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;

/** A quantity that nothing asks for would be validated, documented, and of no use to anybody. */
@AnalyzeClasses(
        packages = "evenrise",
        importOptions = {ImportOption.DoNotIncludeTests.class, ArchitectureTest.WithoutFixtures.class})
class UsedPhysicsTest {
    @ArchTest
    static final ArchRule everyQuantityIsAskedForByTheProgram = methods()
            .that()
            .areDeclaredInClassesThat()
            .resideInAPackage("evenrise.model.electrical..")
            .and()
            .areStatic()
            .and()
            .areNotPrivate()
            .should(new ArchCondition<>("be called by something else than tests") {
                @Override
                public void check(JavaMethod method, ConditionEvents events) {
                    boolean isCalled = method.getAccessesToSelf().stream()
                            .anyMatch(access -> !access.getOrigin().equals(method));
                    boolean isReferred = !method.getReferencesToSelf().isEmpty();
                    boolean isOfAnEnum = method.getOwner().isEnum();
                    events.add(new SimpleConditionEvent(
                            method, isCalled || isReferred || isOfAnEnum, method.getFullName() + " is never called"));
                }
            });
}
