//! Logs as loggers write them: what is read, what is refused line by line, and what the turner is asked.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use evenwall_piece::climate_log::{
    ClimateLog, Column, DateOrder, Fault, LogError, MOST_FAULTS, MOST_LINES, Per, Told, Unit,
    means, read_climate_log,
};
use proptest::prelude::*;

fn read(text: &str) -> Result<ClimateLog, LogError> {
    read_climate_log(text, Told::default())
}

fn values(log: &ClimateLog) -> Vec<(String, f64, f64)> {
    let one = |r: &evenwall_piece::climate_log::LogReading| {
        let tenth = |v: f64| (v * 10.0).round() / 10.0;
        (
            r.at.format("%m-%d %H:%M").to_string(),
            tenth(r.temp_c),
            tenth(r.rh_pct),
        )
    };
    log.readings.iter().map(one).collect()
}

fn two() -> Vec<(String, f64, f64)> {
    vec![
        ("01-30 14:00".to_owned(), 18.5, 61.0),
        ("01-31 14:00".to_owned(), 19.0, 58.5),
    ]
}

#[test]
fn files_in_the_usual_manners_all_give_the_same_readings() {
    for text in [
        "Time,Temperature,Humidity\n2026-01-30 14:00,18.5,61\n2026-01-31 14:00,19,58.5\n",
        "\u{feff}Timestamp for sample frequency every 1 min,Temperature_Celsius,Relative_Humidity\r\n2026-01-30 14:00:00,18.5,61.0\r\n2026-01-31 14:00:00,19.0,58.5\r\n",
        "Datum;Uhrzeit;Temperatur [\u{b0}C];rel. Feuchte [%]\n30.01.2026;14:00;18,5;61,0\n31.01.2026;14:00;19,0;58,5\n",
        "Date\tTime\tHumidity (%RH)\tTemp (\u{b0}C)\n30/01/2026\t14:00\t61\t18.5\n31/01/2026\t14:00\t58.5\t19\n",
        "\"#\",\"Date Time, GMT+00:00\",\"Temp, \u{b0}F\",\"RH, %\"\n1,01/30/26 02:00:00 PM,65.3,61\n2,01/31/26 02:00:00 PM,66.2,58.5\n",
        "Logger of the shop\nSerial no.;1234\n\nDate/Time;Dew point;RH;T\n2026-01-30T14:00:00;9,1;61;18,5\n2026-01-31T14:00:00;9,0;58,5;19\n",
        "2026-01-30 14:00,18.5,61\n2026-01-31 14:00,19,58.5\n",
        "1;30.01.2026 14:00;18,5;61;x\n2;31.01.2026 14:00;19;58,5;x\n",
        "Date,Time,\"Temp\",\"Hum\"\n2026-01-31,14:00,\"19,0\",\"58,5\"\n2026-01-30,14:00,\"18,5\",\"61,0\"\n;\n",
        "time;t (c);rh\r2026-01-30 14:00;18,5\u{b0}C;61 %\r2026-01-31 14:00;19\u{b0}C;58,5 %\r",
    ] {
        let log = read(text).unwrap_or_else(|e| panic!("{text}\n{e}"));
        assert_eq!(values(&log), two(), "{text}");
        assert!(log.faulty_lines <= 1, "{text}\n{:?}", log.faults);
    }
}

#[test]
fn a_wrong_line_is_named_and_the_others_are_read() {
    let log = read(
        "time,temp,humidity\n\
         2026-01-30 14:00,18.5,61\n\
         yesterday,18.5,61\n\
         2026-01-30 16:00,warm,61\n\
         2026-01-30 17:00,65,61\n\
         2026-01-30 18:00,18.5,161\n\
         2026-01-30 19:00,18.5\n\
         2026-01-30 20:00,18,5,61,0\n\
         2026-01-30 21:00,\"18.5,61\n\
         \n\
         2026-01-31 14:00,19,58.5\n",
    )
    .unwrap();
    assert_eq!(values(&log), two());
    let lines: Vec<usize> = log.faults.iter().map(|f| f.line).collect();
    assert_eq!((lines, log.faulty_lines), (vec![3, 4, 5, 6, 7, 8, 9], 7));
    let text: Vec<String> = log.faults.iter().map(ToString::to_string).collect();
    assert!(text[0].starts_with("line 3: found \"yesterday\" for the time; write it like"));
    assert_eq!(
        text[1],
        "line 4: found \"warm\" for the temperature, which must be a number"
    );
    assert_eq!(
        text[2],
        "line 5: found a temperature of 65 C, but -20 to 60 C are allowed; is the unit right?"
    );
    assert_eq!(
        text[3],
        "line 6: found a humidity of 161 %, but 0 to 100 % are allowed"
    );
    assert!(text[4].contains("found 2 columns, but 3 are needed"));
    assert!(text[5].contains("found 5 columns under 3 headings"));
    assert!(text[6].contains("quotation mark"));
    assert!(matches!(
        &log.faults[1].fault,
        Fault::NotANumber {
            column: Column::Temperature,
            ..
        }
    ));
}

#[test]
fn the_order_of_day_and_month_is_found_told_or_asked_for() {
    let log = |days: &[&str]| {
        let lines: Vec<_> = days.iter().map(|d| format!("{d} 10:00,18,60\n")).collect();
        format!("time,temp,rh\n{}", lines.concat())
    };
    let order = |days: &[&str]| read(&log(days)).map(|l| l.order);
    assert_eq!(
        order(&["03/04/2026", "13/04/2026"]),
        Ok(Some(DateOrder::DayFirst))
    );
    assert_eq!(
        order(&["04/03/2026", "04/13/2026"]),
        Ok(Some(DateOrder::MonthFirst))
    );
    // Time runs on: with the month first 10 February would come before 5 January.
    assert_eq!(
        order(&["05/01/2026", "10/01/2026", "02/02/2026"]),
        Ok(Some(DateOrder::DayFirst))
    );
    assert_eq!(order(&["2026-04-03", "2026-04-13"]), Ok(None));
    let open = log(&["03/04/2026", "04/04/2026", "05/04/2026"]);
    let asked = read(&open).unwrap_err();
    assert_eq!(
        asked,
        LogError::OrderUnknown {
            line: 2,
            found: "03/04/2026 10:00".to_owned()
        }
    );
    assert!(asked.to_string().contains("say which it is"));
    for (order, first) in [
        (DateOrder::DayFirst, "04-03 10:00"),
        (DateOrder::MonthFirst, "03-04 10:00"),
    ] {
        let told = Told {
            order: Some(order),
            unit: None,
        };
        assert_eq!(values(&read_climate_log(&open, told).unwrap())[0].0, first);
    }
    let mixed = read(&log(&["03/04/2026", "13/04/2026", "04/14/2026"])).unwrap_err();
    assert_eq!(
        mixed,
        LogError::OrdersMixed {
            day_first_line: 3,
            month_first_line: 4
        }
    );
}

#[test]
fn fahrenheit_is_read_where_it_is_named_or_told() {
    let plain = "time,temp,rh\n2026-01-30 14:00,50,60\n";
    let log = read(plain).unwrap();
    assert_eq!(
        (log.unit, log.unit_assumed, log.readings[0].temp_c),
        (Unit::Celsius, true, 50.0)
    );
    let told = Told {
        unit: Some(Unit::Fahrenheit),
        order: None,
    };
    let log = read_climate_log(plain, told).unwrap();
    assert_eq!((log.unit, log.unit_assumed), (Unit::Fahrenheit, false));
    assert!((log.readings[0].temp_c - 10.0).abs() < 1e-9);
    let named =
        read("time,temp (F),rh\n2026-01-30 14:00,50,60\n2026-01-30 15:00,150,60\n").unwrap();
    assert_eq!((named.unit, named.unit_assumed), (Unit::Fahrenheit, false));
    assert!(
        named.faults[0]
            .to_string()
            .contains("150 F, but -4 to 140 F are allowed")
    );
}

#[test]
fn what_cannot_be_read_at_all_says_why() {
    for (text, says) in [
        ("", "the file is empty"),
        ("\n\n", "the file is empty"),
        (
            "wood,weight\nash,400\n",
            "no columns of time, temperature and humidity",
        ),
        ("time,temp,rh\n", "none of 1 lines could be read"),
        (
            "time,temp,rh\nnow,18,60\n",
            "line 2: found \"now\" for the time",
        ),
        (
            "time,temp,rh\n2026-01-30 14:00,18,0.61\n",
            "multiply the column by 100",
        ),
    ] {
        let error = read(text).unwrap_err().to_string();
        assert!(error.contains(says), "{text:?}: {error}");
    }
    let long = "2026-01-30 14:00,18,60\n".repeat(MOST_LINES + 1);
    assert_eq!(
        read(&long),
        Err(LogError::TooLong {
            lines: MOST_LINES + 1
        })
    );
}

#[test]
fn of_one_time_the_last_counts_and_many_faults_are_counted() {
    let mut text = "2026-01-30 14:00,18,60\n2026-01-30 14:00,19,50\n".to_owned();
    text.push_str(&"2026-01-30 15:00,--,60\n".repeat(150));
    let log = read(&text).unwrap();
    assert_eq!(values(&log), [("01-30 14:00".to_owned(), 19.0, 50.0)]);
    assert_eq!((log.faults.len(), log.faulty_lines), (MOST_FAULTS, 150));
}

#[test]
fn a_log_is_thinned_to_hours_and_days() {
    let line = |i: u32| {
        format!(
            "2026-01-{:02} {:02}:{:02},{},{}\n",
            1 + i / 144,
            i / 6 % 24,
            10 * (i % 6),
            10 + i % 6,
            60
        )
    };
    let log = read(&(0..432).map(line).collect::<String>()).unwrap();
    let hours = means(&log.readings, Per::Hour);
    let days = means(&log.readings, Per::Day);
    assert_eq!((hours.len(), days.len()), (72, 3));
    assert_eq!(hours[1].at.format("%d %H:%M").to_string(), "01 01:30");
    assert_eq!(days[2].at.format("%d %H:%M").to_string(), "03 12:00");
    assert!(
        days.iter()
            .all(|d| (d.temp_c - 12.5).abs() < 1e-9 && d.rh_pct == 60.0)
    );
    assert!(means(&[], Per::Day).is_empty());
}

#[test]
fn the_most_lines_that_are_read_are_all_read() {
    let line = |i: usize| {
        format!(
            "{}/{:02}/2026 {:02}:{:02},18.5,60\n",
            13 + i / 1440 % 15,
            1 + i / 21600 % 9,
            i / 60 % 24,
            i % 60
        )
    };
    let log = read(&(0..MOST_LINES).map(line).collect::<String>()).unwrap();
    assert_eq!((log.readings.len(), log.faulty_lines), (15 * 1440 * 9, 0));
}

proptest! {
    #[test]
    fn any_text_gives_readings_or_a_reason(text in "(?s).{0,400}") {
        let _ = read(&text).map_err(|e| e.to_string());
    }

    #[test]
    fn any_cells_give_readings_within_range_or_a_reason(
        cells in proptest::collection::vec(
            prop_oneof!["[0-9/.:T Z+-]{0,20}", "[0-9]{1,2}/[0-9]{1,2}/20[0-9]{2} [0-9]{1,2}:[0-9]{2}", "-?[0-9]{1,3}[.,]?[0-9]?", "time", "\"", "\u{b0}F"],
            0..60
        ),
        between in prop_oneof![Just(","), Just(";"), Just("\t")]
    ) {
        let text: String = cells.chunks(3).map(|c| c.join(between) + "\n").collect();
        if let Ok(log) = read(&format!("time{between}temp{between}rh\n{text}")) {
            prop_assert!(log.readings.windows(2).all(|w| w[0].at < w[1].at));
            prop_assert!(log.readings.iter().all(|r| (-20.0..=60.0).contains(&r.temp_c) && (0.0..=100.0).contains(&r.rh_pct)));
        }
    }

    #[test]
    fn what_is_written_is_read_back(
        start in 0_i64..1_000_000, gaps in proptest::collection::vec((1_i64..5000, -20.0..60.0_f64, 2.0..100.0_f64), 1..40)
    ) {
        let mut at = chrono::DateTime::from_timestamp(1_700_000_000 + 60 * start, 0).unwrap().naive_utc();
        let (mut text, mut want) = ("time;temp;rh\n".to_owned(), Vec::new());
        for (minutes, temp, rh) in gaps {
            at += chrono::Duration::minutes(minutes);
            text.push_str(&format!("{};{temp:.2};{rh:.2}\n", at.format("%Y-%m-%d %H:%M")).replace('.', ","));
            want.push((at.format("%Y-%m-%d %H:%M").to_string(), format!("{temp:.2}"), format!("{rh:.2}")));
        }
        let log = read(&text).unwrap();
        let got: Vec<_> = log.readings.iter()
            .map(|r| (r.at.format("%Y-%m-%d %H:%M").to_string(), format!("{:.2}", r.temp_c), format!("{:.2}", r.rh_pct)))
            .collect();
        prop_assert_eq!(got, want);
        prop_assert_eq!(log.faulty_lines, 0);
    }
}
