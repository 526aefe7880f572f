package rosinbook;

import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import org.junit.jupiter.api.Test;

/** Which room may know which. */
class RoomsTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("rosinbook");

    @Test
    void arrows_point_down_only() {
        layeredArchitecture()
                .consideringOnlyDependenciesInAnyPackage("rosinbook..")
                .layer("doors")
                .definedBy("rosinbook.web..", "rosinbook.cli..")
                .layer("store")
                .definedBy("rosinbook.store..")
                .layer("share")
                .definedBy("rosinbook.share..")
                .layer("log")
                .definedBy("rosinbook.log..")
                .layer("access")
                .definedBy("rosinbook.access..")
                .layer("example")
                .definedBy("rosinbook.example..")
                .layer("readout")
                .definedBy("rosinbook.readout..")
                .layer("notebook")
                .definedBy("rosinbook.notebook..")
                .layer("compare")
                .definedBy("rosinbook.compare..")
                .layer("benches")
                .definedBy("rosinbook.circuit..", "rosinbook.level..", "rosinbook.take..", "rosinbook.sound..")
                .layer("pitch")
                .definedBy("rosinbook.pitch..")
                .layer("limit")
                .definedBy("rosinbook.limit..")
                .whereLayer("doors")
                .mayNotBeAccessedByAnyLayer()
                .whereLayer("store")
                .mayOnlyBeAccessedByLayers("doors")
                .whereLayer("share")
                .mayOnlyBeAccessedByLayers("doors", "store")
                .whereLayer("log")
                .mayOnlyBeAccessedByLayers("doors")
                .whereLayer("access")
                .mayOnlyBeAccessedByLayers("doors", "store")
                .whereLayer("example")
                .mayOnlyBeAccessedByLayers("doors")
                .whereLayer("readout")
                .mayOnlyBeAccessedByLayers("doors", "share")
                .whereLayer("notebook")
                .mayOnlyBeAccessedByLayers("doors", "store", "share", "access", "example", "readout")
                .whereLayer("compare")
                .mayOnlyBeAccessedByLayers("doors", "notebook", "readout", "example")
                .whereLayer("benches")
                .mayOnlyBeAccessedByLayers("doors", "notebook", "readout")
                .check(CLASSES);
    }

    @Test
    void benches_know_nobody_but_notes_by_name_and_limits() {
        for (String bench : new String[] {"circuit", "level", "take", "sound"}) {
            ArchRuleDefinition.noClasses()
                    .that()
                    .resideInAPackage("rosinbook." + bench + "..")
                    .should()
                    .dependOnClassesThat(com.tngtech.archunit.base.DescribedPredicate.describe(
                            "belong to another room",
                            type -> type.getPackageName().startsWith("rosinbook.")
                                    && !type.getPackageName().startsWith("rosinbook." + bench)
                                    && !type.getPackageName().startsWith("rosinbook.pitch")
                                    && !type.getPackageName().startsWith("rosinbook.limit")))
                    .allowEmptyShould(true)
                    .check(CLASSES);
        }
    }

    @Test
    void rules_of_keeping_know_no_sql_and_no_http() {
        ArchRuleDefinition.noClasses()
                .that()
                .resideInAnyPackage(
                        "rosinbook.notebook..", "rosinbook.compare..", "rosinbook.readout..", "rosinbook.share..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.jooq..", "java.sql..", "javax.sql..", "io.javalin..", "jakarta.servlet..")
                .check(CLASSES);
    }

    @Test
    void no_two_rooms_know_each_other() {
        slices().matching("rosinbook.(*)..").should().beFreeOfCycles().check(CLASSES);
    }
}
