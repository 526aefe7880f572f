package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.Page;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rosinbook.testing.Axe;
import rosinbook.testing.Browsers;
import rosinbook.testing.Browsers.Screen;
import rosinbook.testing.OneBrowser;
import rosinbook.testing.ServedNotebook;
import rosinbook.testing.Visitor;

@ExtendWith(OneBrowser.class)
class BackupsIT {
    @ParameterizedTest
    @EnumSource
    void a_player_sees_when_the_last_backup_was_made_and_makes_one(Screen screen, Browsers browsers) {
        try (ServedNotebook notebook = ServedNotebook.withExample();
                Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/");
            page.getByText("More").first().click();
            visitor.button("Take along, bring in").click();
            assertThat(page.locator(".backups p")).hasText(Pattern.compile("^Not backed up yet"));
            visitor.button("Back up now").click();
            assertThat(page.locator(".backups p"))
                    .hasText(Pattern.compile("^Last backed up on 19 Nov 2026, \\d\\d:\\d\\d\\."));
            assertEquals(List.of(), Axe.serious(page));
            assertEquals(1, visitor.read("/api/backups").path("items").size());
        }
    }
}
