//! What has been said against these numbers, as typed cautions to show beside them.

macro_rules! cautions {
    ($($variant:ident $text:literal $meaning:literal),+ $(,)?) => {
        /// A published criticism, or a limit that follows from the definition, that belongs beside a number.
        #[non_exhaustive]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[cfg_attr(
            feature = "serde",
            derive(serde::Serialize, serde::Deserialize),
            serde(rename_all = "snake_case")
        )]
        pub enum LoadCaution {
            $(#[doc = $meaning] $variant,)+
        }

        impl LoadCaution {
            /// Every caution of this version.
            pub const ALL: &'static [LoadCaution] = &[$(LoadCaution::$variant,)+];

            /// The stable machine text, the same as in JSON.
            ///
            /// ```
            /// assert_eq!(bismar::dose::LoadCaution::SharedDays.as_str(), "shared_days");
            /// ```
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $(LoadCaution::$variant => $text,)+ }
            }

            /// What it says, in plain words, with its source.
            #[must_use]
            pub const fn meaning(self) -> &'static str {
                match self { $(LoadCaution::$variant => $meaning,)+ }
            }
        }
    };
}

cautions! {
    SameLiftOnly "same_lift_only"
        "Load times repetitions is comparable within one lift of one person only; height and body mass are not in it.",
    RestsCountAsLoad "rests_count_as_load"
        "Rating times minutes counts rests as load, and lifting sessions are mostly rest.",
    SharedDays "shared_days"
        "The recent days are inside the usual load too, so the two go together even where the weeks have nothing to do with each other (Lolli et al. 2019, Br J Sports Med 53:921-922).",
    RescaledRecentLoad "rescaled_recent_load"
        "Dividing by usual load adds little: a constant, or random numbers, in its place gave much the same (Impellizzeri et al. 2021, doi 10.1007/s40279-020-01378-6).",
    NotCheckedInLifting "not_checked_in_lifting"
        "Bands for this ratio come from team sports; none was checked in lifting and none is shown.",
    ShortHistory "short_history"
        "There are too few days of history for a usual load.",
    StartValueMatters "start_value_matters"
        "The first weeks of a weighted load still depend on the value it was started with.",
    UsualLoadSmall "usual_load_small"
        "Usual load is far below this lifter's own typical level, as after a holiday, so a ratio would only say that training started again.",
    TeachingSimulation "teaching_simulation"
        "A simulation for teaching: double load has double effect in it, sessions do not interact, and its time constants are poorly known for anyone (Hellard et al. 2006, doi 10.1080/02640410500244697).",
    YoungSample "young_sample"
        "The people measured were young adults; nobody older was.",
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_are_unique_and_sentences() {
        for (index, caution) in LoadCaution::ALL.iter().enumerate() {
            assert!(caution.meaning().ends_with('.'), "{caution:?}");
            assert!(!LoadCaution::ALL[..index].iter().any(|earlier| earlier.as_str() == caution.as_str()));
        }
    }

    #[cfg(feature = "serde")]
    #[test]
    fn machine_texts_are_those_of_json() {
        for caution in LoadCaution::ALL {
            let text = crate::value::Value::write(caution);
            assert_eq!(text, Ok(crate::value::Value::Text(caution.as_str().into())));
        }
    }
}
